import { studentQuantile } from '@buildweek/numbers';
import { checkShare } from './checks.ts';
import { variance } from './summary.ts';

/**
 * How many replications decide by the sign of a mean whether its true value is above 0, where a value one tolerance
 * away is put on the wrong side with at most the given chance: N = max(n0, ⌈(t S / tolerance)²⌉), t the one-sided
 * critical value with n0 − 1 degrees of freedom. This is what a sequential test is measured against: all of these
 * replications are played before anything is decided. For several candidates and constraints together the error is
 * shared among them beforehand.
 *
 * Given S the mean of all N is normal about the true one, and (mean − truth) √N / S has Student's distribution; at a
 * tolerance below 0 the mean is above 0 only if this exceeds √N tolerance / S ≥ t.
 * Source: C. Stein, "A two-sample test for a linear hypothesis whose power is independent of the variance", Annals of
 * Mathematical Statistics 16 (1945), 243–258.
 * @param firstStage at least two values
 * @param tolerance in the unit of the values, above 0
 * @param error below ½
 * @throws RangeError for anything else
 */
export function fixedSizeReplications(
  firstStage: ArrayLike<number>,
  tolerance: number,
  error: number,
): number {
  checkShare('error level', 2 * error);
  if (!(tolerance > 0)) throw new RangeError(`The tolerance must be above 0, not ${tolerance}`);
  const t = studentQuantile(1 - error, firstStage.length - 1);
  return Math.max(firstStage.length, Math.ceil((t / tolerance) ** 2 * variance(firstStage)));
}
