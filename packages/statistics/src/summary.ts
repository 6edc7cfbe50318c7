import { sum } from '@buildweek/numbers';
import { checkPairs, checkValues } from './checks.ts';

/** The arithmetic mean.
 * @throws RangeError for no values, or one that is not finite
 */
export function mean(values: ArrayLike<number>): number {
  checkValues(values, 1);
  return sum(values) / values.length;
}

/**
 * The sample variance, with n − 1. Two passes, corrected for the rounding of the mean: T. F. Chan, G. H. Golub
 * and R. J. LeVeque, "Algorithms for computing the sample variance", The American Statistician 37 (1983),
 * 242–247, formula (1.7).
 * @throws RangeError for fewer than two values, or one that is not finite
 */
export function variance(values: ArrayLike<number>): number {
  checkValues(values, 2);
  return squaredDeviations(values, mean(values)) / (values.length - 1);
}

/** The square root of the sample variance. Errors as there. */
export function standardDeviation(values: ArrayLike<number>): number {
  return Math.sqrt(variance(values));
}

/** Standard error of the mean of independent values. Errors as for the variance. */
export function standardError(values: ArrayLike<number>): number {
  return Math.sqrt(variance(values) / values.length);
}

/**
 * Pearson's coefficient of correlation of pairs.
 * @returns a number between −1 and 1; NaN when one side does not vary
 * @throws RangeError for sides of different length, fewer than two pairs, or a value that is not finite
 */
export function correlation(first: ArrayLike<number>, second: ArrayLike<number>): number {
  checkPairs(first, second);
  checkValues(first, 2);
  checkValues(second, 2);
  const firstMean = mean(first);
  const secondMean = mean(second);
  const products = new Float64Array(first.length);
  for (let index = 0; index < products.length; index++) {
    products[index] = ((first[index] as number) - firstMean) * ((second[index] as number) - secondMean);
  }
  const spread = Math.sqrt(squaredDeviations(first, firstMean) * squaredDeviations(second, secondMean));
  return Math.max(-1, Math.min(1, sum(products) / spread));
}

/** Count, mean and sum of squared deviations from that mean: what pooling needs of one replication. */
export interface Moments {
  readonly count: number;
  readonly mean: number;
  readonly squares: number;
}

/** The moments of the values; all zero for no values.
 * @throws RangeError when a value is not finite
 */
export function moments(values: ArrayLike<number>): Moments {
  checkValues(values, 0);
  if (values.length === 0) return { count: 0, mean: 0, squares: 0 };
  const centre = mean(values);
  return { count: values.length, mean: centre, squares: squaredDeviations(values, centre) };
}

/** Sum of squared deviations from the mean, which is handed over. */
function squaredDeviations(values: ArrayLike<number>, centre: number): number {
  let squares = 0;
  let rest = 0;
  for (let index = 0; index < values.length; index++) {
    const deviation = (values[index] as number) - centre;
    squares += deviation * deviation;
    rest += deviation;
  }
  return Math.max(0, squares - (rest * rest) / values.length);
}
