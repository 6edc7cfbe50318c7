import type { EstimateOrRefused } from '@buildweek/results';
import { explainedVariance, type Interval } from '@buildweek/statistics';
import { columns } from '../plans/measure-estimates.ts';
import type { Observation } from '../plans/observed-plans.ts';

/** What explains the differences between drawn worlds. */
export interface ExplainedShares {
  /** One for each doubt. */
  readonly doubts: readonly EstimateOrRefused[];
  readonly together: EstimateOrRefused;
  /** Whether ranks stand for the values, since some have none. */
  readonly isRanked: boolean;
}

/**
 * Which share of the variance of a measure over the drawn worlds each doubt explains. Where some worlds lie beyond the
 * end of what was played, values are replaced by their ranks (A. Saltelli and others, Sensitivity Analysis in Practice
 * (2004), section 2.3 on rank transformation, from memory).
 *
 * @param factors one row for each world
 * @param measure position among the measures
 */
export function explainedShares(
  factors: readonly (readonly number[])[],
  worlds: readonly Observation[],
  measure: number,
  level: number,
): ExplainedShares {
  const { numerators, denominators } = columns(worlds, measure);
  const told = numerators.flatMap((numerator, world) => {
    const denominator = denominators[world] ?? 0;
    return denominator > 0 ? [{ row: factors[world] ?? [], value: numerator / denominator }] : [];
  });
  const isRanked = told.some(({ value }) => !Number.isFinite(value));
  const values = told.map(({ value }) => value);
  const rows = told.map(({ row }) => row);
  const count = factors[0]?.length ?? 0;
  try {
    const found = explainedVariance(rows, isRanked ? ranksOf(values) : values, level);
    const estimate = (interval: Interval): EstimateOrRefused => ({
      kind: 'estimate',
      value: interval.value,
      low: interval.low,
      high: interval.high,
      level,
      replications: told.length,
    });
    return { doubts: found.factors.map(estimate), together: estimate(found.together), isRanked };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    const refused: EstimateOrRefused = { kind: 'refused', reason: `Too few worlds: ${error.message}.` };
    return { doubts: Array.from({ length: count }, () => refused), together: refused, isRanked };
  }
}

/** Ranks from 1; equal values share the mean of theirs. */
export function ranksOf(values: readonly number[]): number[] {
  const order = values.map((value, index) => ({ value, index })).sort((a, b) => compare(a.value, b.value));
  const ranks = new Array<number>(values.length);
  for (let first = 0; first < order.length; ) {
    let last = first;
    while (last + 1 < order.length && order[last + 1]?.value === order[first]?.value) last++;
    for (let position = first; position <= last; position++) {
      ranks[order[position]?.index ?? 0] = (first + last) / 2 + 1;
    }
    first = last + 1;
  }
  return ranks;
}

function compare(a: number, b: number): number {
  return a === b ? 0 : a < b ? -1 : 1;
}
