import type { Band } from '@buildweek/results';
import { expect, test } from 'vitest';
import { bandRows } from './band-layers.ts';

function band(value: readonly number[], half: number): Band {
  return {
    value: [...value],
    low: value.map((one) => one - half),
    high: value.map((one) => one + half),
    level: 0.95,
    replications: 30,
  };
}

test('Each point of a curve stands with its interval.', () => {
  expect(bandRows(band([3, 5], 1), (index) => index + 0.5)).toEqual([
    { x: 0.5, value: 3, low: 2, high: 4 },
    { x: 1.5, value: 5, low: 4, high: 6 },
  ]);
});
