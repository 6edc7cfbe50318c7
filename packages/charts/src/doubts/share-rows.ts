import type { Estimate } from '@buildweek/results';
import type { Chart, ChartSize, Layer } from '../chart.ts';
import { INK, MUTED_INK } from '../palette.ts';
import { plotWidth, rowAxis, rowEnds, rowNames } from '../row-axis.ts';
import { themeFor } from '../theme.ts';

/** A share in one row, or in one of two lanes of it. */
export interface ShareMark {
  readonly row: number;
  /** Lane of its row; position in the series. */
  readonly lane: number;
  readonly share: Estimate;
}

/** Shares that stand in the same lane of all rows. */
export interface ShareSeries {
  readonly name: string;
  readonly colour: string;
  readonly shape: string;
}

const STEP: Readonly<Record<ChartSize, number>> = { wide: 40, narrow: 56 };
const LANES: Readonly<Record<ChartSize, readonly [number, number]>> = {
  wide: [-0.16, 0.16],
  narrow: [0.08, 0.32],
};

function laneOf({ row, lane }: ShareMark, series: number, size: ChartSize): number {
  if (series === 1) return row + (size === 'wide' ? 0 : 0.2);
  return row + (LANES[size][lane] ?? 0);
}

/**
 * A chart of shares from 0 to 100 % with their intervals, in rows.
 *
 * @param names of the rows
 * @param ends words behind them
 * @param series one or two
 */
export function shareRows(
  names: readonly string[],
  ends: { readonly title: string; readonly words: readonly string[] },
  series: readonly ShareSeries[],
  marks: readonly ShareMark[],
  title: string,
  size: ChartSize,
): Chart['spec'] {
  const rows = names.map((name) => ({ name }));
  const behind = { title: ends.title, words: size === 'wide' ? ends.words : [] };
  const drawn = rows.map((row, index) =>
    size === 'wide' ? row : { ...row, suffix: `: ${ends.words[index] ?? ''}` },
  );
  const width = plotWidth(rows, behind, size);
  const values = marks.map((mark) => ({
    at: laneOf(mark, series.length, size),
    value: mark.share.value,
    low: mark.share.low,
    high: mark.share.high,
    series: series[mark.lane]?.name ?? '',
  }));
  const domain = series.map(({ name }) => name);
  const legend = series.length === 1 ? null : { title: null, orient: 'top' as const };
  const y = { field: 'at', type: 'quantitative' } as const;
  const layers: Layer[] = [
    {
      data: { values },
      mark: { type: 'rule', color: MUTED_INK, strokeWidth: 3 },
      encoding: { x: { field: 'low', type: 'quantitative' }, x2: { field: 'high' }, y },
    },
    {
      data: { values },
      mark: { type: 'point', filled: true, size: 105, opacity: 1, stroke: INK, strokeWidth: 1.2 },
      encoding: {
        x: { field: 'value', type: 'quantitative' },
        y,
        fill: {
          field: 'series',
          type: 'nominal',
          scale: { domain, range: series.map(({ colour }) => colour) },
          legend,
        },
        shape: {
          field: 'series',
          type: 'nominal',
          scale: { domain, range: series.map(({ shape }) => shape) },
          legend,
        },
      },
    },
  ];
  return {
    config: themeFor(size),
    width,
    height: STEP[size] * rows.length,
    layer: [...layers, ...rowNames(drawn, size, 6), ...rowEnds(behind, width, size)],
    encoding: {
      x: {
        type: 'quantitative',
        scale: { domain: [0, 1], nice: false },
        axis: { title, format: '.0%', tickCount: size === 'wide' ? 10 : 5 },
      },
      y: rowAxis(rows.length),
    },
  };
}
