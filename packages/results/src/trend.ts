import type { Estimate } from './estimate.ts';
import type { Band } from './measures.ts';

/** How a curve goes from its first to its last quarter, said only where the intervals do not meet. */
export type Trend =
  | { readonly kind: 'steady' }
  | { readonly kind: 'grows' | 'falls'; readonly from: Estimate; readonly to: Estimate };

/**
 * Mean of some points of a curve. The interval is made of the mean low and the mean high, which is at least as wide
 * as the interval of the mean: the standard deviation of a sum is at most the sum of the standard deviations.
 */
function meanOver(band: Band, start: number, end: number): Estimate {
  const mean = (values: readonly number[]): number =>
    values.slice(start, end).reduce((sum, value) => sum + value, 0) / Math.max(1, end - start);
  return {
    kind: 'estimate',
    value: mean(band.value),
    low: mean(band.low),
    high: mean(band.high),
    level: band.level,
    replications: band.replications,
  };
}

/** Mean of a curve, with an interval that is at least as wide as it has to be; 0 for a curve without points. */
export function meanOfBand(band: Band): Estimate {
  return meanOver(band, 0, band.value.length);
}

function quarterOf(band: Band): number {
  return Math.max(1, Math.floor(band.value.length / 4));
}

/** Compares the first with the last quarter of a curve, so that a bump between them is no trend. */
export function trendOf(band: Band): Trend {
  const { length } = band.value;
  if (length < 2) return { kind: 'steady' };
  const quarter = quarterOf(band);
  const from = meanOver(band, 0, quarter);
  const to = meanOver(band, length - quarter, length);
  if (to.low > from.high) return { kind: 'grows', from, to };
  if (to.high < from.low) return { kind: 'falls', from, to };
  return { kind: 'steady' };
}

/** Growth of less than this share of the start may be chance or a season. Common practice, no source. */
const SMALLEST_GROWTH = 0.25;

/**
 * Whether the jobs in the lab grow so far, and so long, that the lab does not keep up: the last quarter of the weeks
 * lies clearly above the first, by more than a quarter of it, and clearly above the second too, so that a lab that
 * only fills at its start is not meant.
 * @param jobsInLab jobs in the lab by week
 */
export function lastingGrowth(jobsInLab: Band): { readonly from: Estimate; readonly to: Estimate } | null {
  const trend = trendOf(jobsInLab);
  if (trend.kind !== 'grows' || trend.to.value <= (1 + SMALLEST_GROWTH) * trend.from.value) return null;
  const quarter = quarterOf(jobsInLab);
  const isLong = jobsInLab.value.length >= 4;
  if (isLong && trend.to.low <= meanOver(jobsInLab, quarter, 2 * quarter).high) return null;
  return { from: trend.from, to: trend.to };
}
