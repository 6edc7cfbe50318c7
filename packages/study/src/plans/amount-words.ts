import { type Estimate, figureOf } from '@buildweek/results';

/** A share in per cent with its interval: `93 % (91 to 94)`. */
export function percentWords(estimate: Estimate): string {
  const { value, range } = figureOf(estimate, 0.01, 0);
  return range === null ? `${value} %` : `${value} % (${range.low} to ${range.high})`;
}

/** Money without cents, its thousands set apart by a thin space. */
export function amountWords(amount: number): string {
  return String(Math.round(amount)).replace(/\B(?=(?:\d{3})+$)/g, '\u202f');
}
