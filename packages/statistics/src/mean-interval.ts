import { studentQuantile } from '@buildweek/numbers';
import { checkLevel } from './checks.ts';
import type { Interval } from './interval.ts';
import { mean, standardDeviation, standardError } from './summary.ts';

/**
 * Student's interval of a mean from independent values, one for each replication.
 * Source: A. M. Law and W. D. Kelton, Simulation Modeling and Analysis, third edition, section 9.4.1.
 * @throws RangeError for fewer than two values, one that is not finite, or unless 0 < level < 1
 */
export function meanInterval(values: ArrayLike<number>, level: number): Interval {
  return studentInterval(mean(values), standardError(values), values.length - 1, level);
}

/** An interval from a value, its standard error and the degrees of freedom of the latter. */
export function studentInterval(
  value: number,
  error: number,
  degreesOfFreedom: number,
  level: number,
): Interval {
  checkLevel(level);
  const half = studentQuantile((1 + level) / 2, degreesOfFreedom) * error;
  return { value, low: value - half, high: value + half, level };
}

/**
 * How many replications a half width needs, if the standard deviation stays what it is in the values so far.
 * Source: A. M. Law and W. D. Kelton, Simulation Modeling and Analysis, third edition, section 9.4.1.
 * @param values at least two, one for each replication
 * @param halfWidth in the unit of the values, above 0
 * @returns at least the number of values
 * @throws RangeError as for the interval, or when the half width is not positive
 */
export function replicationsForHalfWidth(
  values: ArrayLike<number>,
  level: number,
  halfWidth: number,
): number {
  checkLevel(level);
  if (!(halfWidth > 0)) throw new RangeError(`The half width must be above 0, not ${halfWidth}`);
  const deviation = standardDeviation(values);
  const enough = (n: number) =>
    studentQuantile((1 + level) / 2, n - 1) * deviation <= halfWidth * Math.sqrt(n);
  let low = values.length - 1;
  let high = values.length;
  while (!enough(high)) {
    low = high;
    high *= 2;
  }
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (enough(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/**
 * How many replications make the error at most a share of the true mean. The half width may be share / (1 + share)
 * of the estimate, since that may be off as well.
 * Source: as above.
 * @param share between 0 and 1
 * @throws RangeError as above, or when the mean is 0
 */
export function replicationsForRelativeError(
  values: ArrayLike<number>,
  level: number,
  share: number,
): number {
  return replicationsForHalfWidth(values, level, (share / (1 + share)) * Math.abs(mean(values)));
}
