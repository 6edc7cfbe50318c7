import { expect, test } from 'vitest';
import { PERSON_STATE_PARTS } from './palette.ts';
import { type StackedBar, stackedBars } from './stacked-bars.ts';

function bar(values: readonly number[]): StackedBar {
  const parts = [PERSON_STATE_PARTS.work, PERSON_STATE_PARTS['other duties'], PERSON_STATE_PARTS.idle];
  return {
    name: 'technicians',
    suffix: '',
    segments: parts.map((part, index) => ({
      part,
      value: values[index] ?? 0,
      words: `${values[index] ?? 0} h`,
    })),
    whisker: { low: 20, high: 22 },
    process: null,
    endWords: '',
  };
}

/** Rows of data of the n-th layer. */
function rowsOf(values: readonly number[], layer: number): Record<string, unknown>[] {
  const spec = stackedBars({
    bars: [bar(values)],
    size: 'wide',
    axisTitle: 'h',
    shares: false,
    top: 40,
    endTitle: '',
  });
  const data = spec.layer[layer]?.data as unknown as { values: Record<string, unknown>[] } | undefined;
  return data?.values ?? [];
}

test('Pieces stand one behind the other, from nothing to the sum.', () => {
  expect(rowsOf([20, 5, 15], 0).map((row) => [row.start, row.end])).toEqual([
    [0, 20],
    [20, 25],
    [25, 40],
  ]);
});

test('A piece without a value is not drawn.', () => {
  expect(rowsOf([20, 0, 15], 0)).toHaveLength(2);
});

test('A label is as long as its piece allows: words and value, the letter, nothing.', () => {
  expect(rowsOf([20, 1, 15], 1).map((row) => row.label)).toEqual(['work on jobs 20 h', 'B', 'free 15 h']);
  expect(rowsOf([20, 0.2, 15], 1).map((row) => row.label)).toEqual(['work on jobs 20 h', 'free 15 h']);
});

test('The letters of the parts that occur follow each other, so that none is missing in the legend.', () => {
  expect(rowsOf([20, 0, 15], 0).map((row) => row.part)).toEqual(['A  work on jobs', 'B  free']);
});
