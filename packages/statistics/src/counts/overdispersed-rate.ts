import { gammaQuantile, inverseNormal, studentQuantile } from '@buildweek/numbers';
import { checkLevel } from '../checks.ts';
import type { Interval } from '../interval.ts';

/**
 * Interval of a weekly rate when whole weeks differ beyond chance: the count varies by 1 + m·v² times as much as a Poisson
 * count, m being the mean of a week and v the coefficient of variation of the weeks' factors, so that it tells as much as a
 * Poisson count that is smaller by that. The variation is known from the same weeks only, so that Student's quantile takes
 * the place of the normal one. Without variation it is the exact interval of Garwood.
 * Source: P. McCullagh and J. A. Nelder, Generalized Linear Models (1989), section 6.2.3 (over-dispersed counts); the limits
 * are those of a gamma law, as Garwood's.
 *
 * To cover as often as it says, the variation has to be that of the counts whether or not it is significant: to take none
 * where a test does not find it covers too seldom (93 % where weeks vary by 15 or 25 %, counted on 1,500 logs each).
 *
 * @param weeks two or more where they vary
 * @param variation coefficient of variation of the factors of the weeks, 0 or more
 * @throws RangeError unless the count is at least 0 and there are weeks
 */
export function overdispersedRate(count: number, weeks: number, variation: number, level: number): Interval {
  checkLevel(level);
  if (!(count >= 0 && weeks > (variation > 0 ? 1 : 0) && variation >= 0)) {
    throw new RangeError(`A count of ${count} in ${weeks} weeks that vary by ${variation} cannot be`);
  }
  const value = count / weeks;
  const tail = (1 - level) / 2;
  const inflation =
    variation === 0
      ? 1
      : (1 + value * variation ** 2) * (studentQuantile(1 - tail, weeks - 1) / inverseNormal(1 - tail)) ** 2;
  return {
    value,
    low: count === 0 ? 0 : (inflation * gammaQuantile(tail, count / inflation)) / weeks,
    high: (inflation * gammaQuantile(1 - tail, count / inflation + 1)) / weeks,
    level,
  };
}
