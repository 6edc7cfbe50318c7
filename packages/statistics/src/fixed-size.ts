import { studentQuantile } from '@buildweek/numbers';
import { checkShare } from './checks.ts';
import { variance } from './summary.ts';

/**
 * How many replications decide by a mean whether its true value is above 0, where a value one tolerance away is put on
 * the wrong side with at most the given chance: N = max(n0, ⌈(t S / tolerance)²⌉), t the one-sided critical value with
 * n0 − 1 degrees of freedom. Where the two sides may err differently, t is the mean of both critical values: the line
 * is then drawn so far from 0 that each side has its share of the two tolerances between them. This is what a sequential test is measured against: all of these
 * replications are played before anything is decided. For several candidates and constraints together the error is
 * shared among them beforehand.
 *
 * Given S the mean of all N is normal about the true one, and (mean − truth) √N / S has Student's distribution; at a
 * tolerance below 0 the mean is above 0 only if this exceeds √N tolerance / S ≥ t. With the line at c that is
 * √N (tolerance + c) / S on one side and √N (tolerance − c) / S on the other; their sum does not depend on c.
 * Source: C. Stein, "A two-sample test for a linear hypothesis whose power is independent of the variance", Annals of
 * Mathematical Statistics 16 (1945), 243–258.
 * @param firstStage at least two values
 * @param tolerance in the unit of the values, above 0
 * @param error below ½, of a true value below 0
 * @param otherError below ½, of one above 0
 * @throws RangeError for anything else
 */
export function fixedSizeReplications(
  firstStage: ArrayLike<number>,
  tolerance: number,
  error: number,
  otherError = error,
): number {
  checkShare('error level', 2 * error);
  checkShare('error level', 2 * otherError);
  if (!(tolerance > 0)) throw new RangeError(`The tolerance must be above 0, not ${tolerance}`);
  const freedom = firstStage.length - 1;
  const t = (studentQuantile(1 - error, freedom) + studentQuantile(1 - otherError, freedom)) / 2;
  return Math.max(firstStage.length, Math.ceil((t / tolerance) ** 2 * variance(firstStage)));
}
