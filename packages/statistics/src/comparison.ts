import { studentCumulative } from '@buildweek/numbers';
import { checkPairs } from './checks.ts';
import type { Interval } from './interval.ts';
import { studentInterval } from './mean-interval.ts';
import { correlation, mean, standardError, variance } from './summary.ts';

/** The mean difference first − second, and the test that it is zero. */
export interface Difference extends Interval {
  readonly standardError: number;
  readonly degreesOfFreedom: number;
  /** The difference over its standard error; infinite or NaN where that is zero. */
  readonly t: number;
  /** Two-sided. */
  readonly pValue: number;
}

export interface PairedDifference extends Difference {
  readonly correlation: number;
  /**
   * How many times more replications independent runs would need for the same interval: (var first + var second)
   * / var(first − second). Below 1 pairing does harm.
   */
  readonly varianceReduction: number;
}

/**
 * Difference of two systems that were played on the same random numbers, replication by replication.
 * Source: A. M. Law and W. D. Kelton, Simulation Modeling and Analysis, third edition, section 10.2.1.
 * @param first one value for each replication
 * @param second the same replications, in the same order
 * @throws RangeError for sides of different length, fewer than two pairs, a value that is not finite, or unless
 *   0 < level < 1
 */
export function pairedDifference(
  first: ArrayLike<number>,
  second: ArrayLike<number>,
  level: number,
): PairedDifference {
  checkPairs(first, second);
  const differences = Float64Array.from(first, (value, index) => value - (second[index] as number));
  return {
    ...difference(mean(differences), standardError(differences), differences.length - 1, level),
    correlation: correlation(first, second),
    varianceReduction: (variance(first) + variance(second)) / variance(differences),
  };
}

/**
 * Difference of two systems that were played on independent random numbers; their spreads may differ.
 * Source: B. L. Welch, "The generalization of 'Student's' problem when several different population variances are
 * involved", Biometrika 34 (1947), 28–35.
 * @throws RangeError for fewer than two values on a side, a value that is not finite, no spread on either side, or
 *   unless 0 < level < 1
 */
export function welchDifference(
  first: ArrayLike<number>,
  second: ArrayLike<number>,
  level: number,
): Difference {
  const firstShare = variance(first) / first.length;
  const secondShare = variance(second) / second.length;
  const total = firstShare + secondShare;
  if (total === 0) throw new RangeError('Neither side varies: there are no degrees of freedom');
  const degreesOfFreedom =
    total ** 2 / (firstShare ** 2 / (first.length - 1) + secondShare ** 2 / (second.length - 1));
  return difference(mean(first) - mean(second), Math.sqrt(total), degreesOfFreedom, level);
}

function difference(value: number, error: number, degreesOfFreedom: number, level: number): Difference {
  const t = value / error;
  return {
    ...studentInterval(value, error, degreesOfFreedom, level),
    standardError: error,
    degreesOfFreedom,
    t,
    pValue: Number.isNaN(t) ? 1 : 2 * studentCumulative(-Math.abs(t), degreesOfFreedom),
  };
}
