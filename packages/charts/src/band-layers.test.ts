import type { Band } from '@buildweek/results';
import { expect, test } from 'vitest';
import { bandRows, meanOfBand, trendOf } from './band-layers.ts';

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

test('The mean of a curve has the mean of its ends as interval.', () => {
  expect(meanOfBand(band([2, 4, 9], 1.5))).toEqual({
    kind: 'estimate',
    value: 5,
    low: 3.5,
    high: 6.5,
    level: 0.95,
    replications: 30,
  });
});

test('A curve grows or falls only where the intervals of its first and last quarter do not meet.', () => {
  const rising = [10, 10, 11, 12, 12, 13, 14, 14];
  expect(trendOf(band(rising, 1.5))).toEqual({ kind: 'grows', from: 10, to: 14 });
  expect(trendOf(band(rising, 2.5))).toEqual({ kind: 'steady' });
  expect(trendOf(band([...rising].reverse(), 1.5))).toEqual({ kind: 'falls', from: 14, to: 10 });
  expect(trendOf(band([10], 1))).toEqual({ kind: 'steady' });
});
