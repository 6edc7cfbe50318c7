import { gammaQuantile } from '@buildweek/numbers';
import { checkLevel } from '../checks.ts';
import type { Interval } from '../interval.ts';

/**
 * Interval of a weekly rate when whole weeks differ beyond chance: the count varies by 1 + m·v² times as much as a Poisson
 * count, m being the mean of a week and v the coefficient of variation of the weeks' factors, so that it tells as much as a
 * Poisson count that is smaller by that. Without variation it is the exact interval of Garwood.
 * Source: P. McCullagh and J. A. Nelder, Generalized Linear Models (1989), section 6.2.3 (over-dispersed counts); the limits
 * are those of a gamma law, as Garwood's.
 *
 * @param variation coefficient of variation of the factors of the weeks, 0 or more
 * @throws RangeError unless the count is at least 0 and there are weeks
 */
export function overdispersedRate(count: number, weeks: number, variation: number, level: number): Interval {
  checkLevel(level);
  if (!(count >= 0 && weeks > 0 && variation >= 0)) {
    throw new RangeError(`A count of ${count} in ${weeks} weeks that vary by ${variation} cannot be`);
  }
  const value = count / weeks;
  const inflation = 1 + value * variation ** 2;
  const tail = (1 - level) / 2;
  return {
    value,
    low: count === 0 ? 0 : (inflation * gammaQuantile(tail, count / inflation)) / weeks,
    high: (inflation * gammaQuantile(1 - tail, count / inflation + 1)) / weeks,
    level,
  };
}
