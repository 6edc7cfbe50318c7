import type { Band } from '@buildweek/results';
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
