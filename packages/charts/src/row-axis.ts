import type { ChartSize, Layer, VerticalAxis } from './chart.ts';

/** Where a mark stands on the vertical axis of a chart made of rows. */
export const ROW = { field: 'row', type: 'quantitative' } as const;

/**
 * The vertical axis of a chart made of rows, the first on top. Rows are told by position and not by name, so
 * that equal or shortened names never fall together.
 */
export function rowAxis(rows: number): VerticalAxis {
  return {
    type: 'quantitative',
    axis: null,
    scale: { domain: [-0.5, rows - 0.5], reverse: true, nice: false, zero: false },
  };
}

/** A row's name, and whether it stands out. */
export interface RowName {
  readonly name: string;
  readonly strong?: boolean;
}

/**
 * The names of the rows: beside the plot on a wide chart, above each row on a narrow one.
 *
 * @param names in the order of the rows
 * @param size of the chart
 * @param lift on a narrow chart, how far above the middle of its row a name stands, CSS pixels
 */
export function rowNames(names: readonly RowName[], size: ChartSize, lift: number): Layer[] {
  const rows = names.map((one, row) => ({ row, name: one.name, strong: one.strong ?? false }));
  return [true, false].map((strong): Layer => {
    const fontWeight = strong ? 'bold' : 'normal';
    return {
      data: { values: rows.filter((one) => one.strong === strong) },
      mark:
        size === 'wide'
          ? { type: 'text', align: 'right', baseline: 'middle', x: -10, fontWeight }
          : { type: 'text', align: 'left', baseline: 'bottom', x: 0, dy: -lift, fontWeight },
      encoding: { y: ROW, text: { field: 'name' } },
    };
  });
}

/** Words behind the plot, one for each row. */
export function rowEnds(words: readonly string[], plotWidth: number): Layer {
  return {
    data: { values: words.map((one, row) => ({ row, words: one })) },
    mark: { type: 'text', align: 'left', baseline: 'middle', x: plotWidth + 10 },
    encoding: { y: ROW, text: { field: 'words' } },
  };
}
