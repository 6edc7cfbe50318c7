import { type Estimate, figureOf } from '@buildweek/results';

/** A share that is stated, in per cent without the dust of binary fractions: 7 for 0.07. */
export function percentOf(share: number): number {
  return Number((100 * share).toPrecision(4));
}

/** A share in per cent with its interval: `93 % (91 to 94)`. */
export function percentWords(estimate: Estimate): string {
  const { value, range } = figureOf(estimate, 0.01, 0);
  return range === null ? `${value} %` : `${value} % (${range.low} to ${range.high})`;
}
