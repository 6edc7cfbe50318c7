import { checkShare } from './checks.ts';

/** Rounding of shares such as 0.95 that must not push a whole number over the next one. */
const TOLERANCE = 1e-9;

/**
 * Which of n independent values, counted from the smallest as 1, one further value of the same kind stays below with
 * at least a given probability: the smallest k with k / (n + 1) of at least p, whatever the distribution.
 * Source: G. J. Hahn and W. Q. Meeker, Statistical Intervals (1991), section 5.3 (prediction bound for one future
 * observation).
 *
 * @param p probability, between 0 and 1
 * @param n number of values
 * @returns null when n values are too few for the probability: even the largest promises less
 * @throws RangeError unless 0 < p < 1 and n is a whole number of at least 0
 */
export function predictionRank(p: number, n: number): number | null {
  checkShare('probability', p);
  if (!(Number.isInteger(n) && n >= 0)) throw new RangeError(`A whole number of values is needed, not ${n}`);
  const rank = Math.max(1, Math.ceil(p * (n + 1) - TOLERANCE));
  return rank <= n ? rank : null;
}

/** The fewest values with which one further value can be promised to stay below one of them with probability p. */
export function fewestForPrediction(p: number): number {
  checkShare('probability', p);
  return Math.max(1, Math.ceil(p / (1 - p) - TOLERANCE));
}
