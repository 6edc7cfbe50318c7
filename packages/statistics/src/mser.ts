import { batchMeans } from './batch-means.ts';
import { checkValues } from './checks.ts';
import { mean } from './summary.ts';

/** Fewer values than this at the end say nothing about the variance: their statistic is left out. */
const FEWEST_LEFT = 5;

/** Where a series has lost the memory of its start. */
export interface WarmUp {
  /** Values to leave out at the start, at most half of them. */
  readonly cut: number;
  /** The statistic there: the variance of the values kept over their number. */
  readonly statistic: number;
  /** Mean of the batches that are kept. */
  readonly truncatedMean: number;
  /**
   * The statistic is smaller still somewhere in the second half: the series is too short to tell where the
   * warm-up ends, and the cut is not to be trusted.
   */
  readonly inSecondHalf: boolean;
}

/**
 * The marginal standard error rule: leave out as many values at the start as make Σ(x − x̄)² / n² over the n
 * values kept as small as possible. With a batch size of 5 this is MSER-5.
 * Sources: K. P. White, "An effective truncation heuristic for bias reduction in simulation output", Simulation
 * 69 (1997), 323–334; K. P. White, M. J. Cobb and S. C. Spratt, "A comparison of five steady-state truncation
 * heuristics for simulation", Winter Simulation Conference 2000, 755–760; the warning about the second half is
 * from the same.
 * @param batchSize values are averaged in batches of this size first; an incomplete last batch is left out
 * @throws RangeError for fewer than two batches, or a value that is not finite
 */
export function mser(series: ArrayLike<number>, batchSize = 1): WarmUp {
  checkValues(series, 2 * batchSize);
  const values = batchMeans(series, batchSize);
  const statistics = marginalErrors(values);
  const half = Math.floor(values.length / 2);
  let cut = 0;
  for (let index = 1; index <= half; index++) {
    if (entry(statistics, index) < entry(statistics, cut)) cut = index;
  }
  let inSecondHalf = false;
  for (let index = half + 1; index <= values.length - FEWEST_LEFT; index++) {
    if (entry(statistics, index) < entry(statistics, cut)) inSecondHalf = true;
  }
  return {
    cut: cut * batchSize,
    statistic: entry(statistics, cut),
    truncatedMean: mean(values.subarray(cut)),
    inSecondHalf,
  };
}

/**
 * Entry d: the statistic of the values from d on. Summed from the end, by the updating formula of B. P. Welford,
 * "Note on a method for calculating corrected sums of squares and products", Technometrics 4 (1962), 419–420.
 */
function marginalErrors(values: Float64Array): Float64Array {
  const statistics = new Float64Array(values.length);
  let centre = 0;
  let squares = 0;
  for (let index = values.length - 1; index >= 0; index--) {
    const count = values.length - index;
    const deviation = entry(values, index) - centre;
    centre += deviation / count;
    squares += deviation * (entry(values, index) - centre);
    statistics[index] = squares / (count * count);
  }
  return statistics;
}

function entry(values: Float64Array, index: number): number {
  return values[index] as number;
}
