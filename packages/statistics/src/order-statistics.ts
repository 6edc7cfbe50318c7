import { binomialCumulative } from '@buildweek/numbers';
import { checkLevel, checkShare } from './checks.ts';

/** Ranks, counted from 1, of the order statistics that hold a quantile. */
export interface QuantileRanks {
  /** 0: there is no lower limit. */
  readonly lower: number;
  /** n + 1: there is no upper limit. */
  readonly upper: number;
  /** The confidence that is really reached: at least the level asked for. */
  readonly coverage: number;
}

/**
 * Distribution-free interval of the p-quantile from n independent values: the quantile lies between the
 * order statistics of these ranks, each tail having at most half of 1 − level.
 * Source: G. J. Hahn and W. Q. Meeker, Statistical Intervals (1991), chapter 5; the same in W. J. Conover,
 * Practical Nonparametric Statistics (from memory).
 * @throws RangeError unless n is a whole number of at least 1, 0 < p < 1 and 0 < level < 1
 */
export function quantileRanks(n: number, p: number, level: number): QuantileRanks {
  checkSize(n);
  checkShare('share', p);
  checkLevel(level);
  const tail = (1 - level) / 2;
  // The smallest k with P(at most k below the quantile) above the tail; one less is the last rank that is safe.
  const lower = smallest(n, (k) => binomialCumulative(k, n, p) > tail);
  const upper = smallest(n, (k) => 1 - binomialCumulative(k, n, p) <= tail) + 1;
  const coverage = binomialCumulative(upper - 1, n, p) - binomialCumulative(lower - 1, n, p);
  return { lower, upper, coverage };
}

/**
 * How many independent values are needed so that the value of the given rank, counted from the top, lies
 * above the p-quantile with the confidence asked for. Rank 2 is also the size for a two-sided tolerance
 * interval from the smallest to the largest value.
 * Source: S. S. Wilks, "Determination of sample sizes for setting tolerance limits", Annals of Mathematical
 * Statistics 12 (1941), 91–96.
 * @throws RangeError unless 0 < p < 1, 0 < level < 1 and the rank is a whole number of at least 1
 */
export function sampleSizeForBound(p: number, level: number, rankFromTop = 1): number {
  checkShare('share', p);
  checkLevel(level);
  checkSize(rankFromTop);
  const enough = (n: number) => 1 - binomialCumulative(rankFromTop - 1, n, 1 - p) >= level;
  let high = rankFromTop;
  while (!enough(high)) high *= 2;
  return smallest(high, enough);
}

/** The smallest whole number from 0 to `high` that the rising condition holds for; it is known for `high`. */
function smallest(high: number, holds: (value: number) => boolean): number {
  let low = -1;
  let top = high;
  while (top - low > 1) {
    const middle = Math.floor((low + top) / 2);
    if (holds(middle)) top = middle;
    else low = middle;
  }
  return top;
}

function checkSize(n: number): void {
  if (!(Number.isInteger(n) && n >= 1))
    throw new RangeError(`A whole number of at least 1 is needed, not ${n}`);
}
