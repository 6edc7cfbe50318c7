import type { Band, Estimate } from '@buildweek/results';
import type { Layer } from './chart.ts';
import { BAND, LINE } from './palette.ts';

/** One point of a curve with its interval. */
export interface BandRow {
  readonly x: number;
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/**
 * The points of a curve.
 *
 * @param band the curve with its interval
 * @param at where the n-th value stands on the horizontal axis
 */
export function bandRows(band: Band, at: (index: number) => number): BandRow[] {
  return band.value.map((value, index) => ({
    x: at(index),
    value,
    low: band.low[index] ?? value,
    high: band.high[index] ?? value,
  }));
}

/**
 * A curve as a line in its interval, drawn as an area with an edge so that it is seen without colour too.
 *
 * @param rows the points
 * @param step whether each value holds up to the next point
 */
export function bandLayers(rows: readonly BandRow[], step = false): Layer[] {
  const interpolate = step ? 'step-after' : 'linear';
  return [
    {
      data: { values: [...rows] },
      mark: { type: 'area', color: BAND, opacity: 0.7, interpolate },
      encoding: {
        x: { field: 'x', type: 'quantitative' },
        y: { field: 'low', type: 'quantitative' },
        y2: { field: 'high' },
      },
    },
    {
      data: { values: [...rows] },
      mark: { type: 'line', color: LINE, strokeWidth: 1.8, interpolate },
      encoding: { x: { field: 'x', type: 'quantitative' }, y: { field: 'value', type: 'quantitative' } },
    },
  ];
}

/**
 * Mean of a curve. The interval is made of the mean low and the mean high, which is at least as wide as the
 * interval of the mean: the standard deviation of a sum is at most the sum of the standard deviations.
 */
export function meanOfBand(band: Band): Estimate {
  const mean = (values: readonly number[]): number =>
    values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length;
  return {
    kind: 'estimate',
    value: mean(band.value),
    low: mean(band.low),
    high: mean(band.high),
    level: band.level,
    replications: band.replications,
  };
}

/** How a curve goes from its first to its last quarter, said only where the intervals do not meet. */
export type Trend =
  | { readonly kind: 'steady' }
  | { readonly kind: 'grows' | 'falls'; readonly from: number; readonly to: number };

/**
 * Compares the first with the last quarter of a curve. The mean of the lows and of the highs of a quarter
 * encloses the interval of its mean, so that a trend is never said too soon.
 */
export function trendOf(band: Band): Trend {
  const length = Math.max(1, Math.floor(band.value.length / 4));
  const mean = (values: readonly number[]): number =>
    values.reduce((sum, value) => sum + value, 0) / values.length;
  if (band.value.length < 2) return { kind: 'steady' };
  const from = mean(band.value.slice(0, length));
  const to = mean(band.value.slice(-length));
  if (mean(band.low.slice(-length)) > mean(band.high.slice(0, length))) return { kind: 'grows', from, to };
  if (mean(band.high.slice(-length)) < mean(band.low.slice(0, length))) return { kind: 'falls', from, to };
  return { kind: 'steady' };
}
