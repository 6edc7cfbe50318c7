import fc from 'fast-check';
import { expect, test } from 'vitest';
import { decimalsFor, figureOf, formatNumber } from './figure.ts';

test('Decimals follow the width of the interval, between those asked for and two.', () => {
  expect(figureOf({ value: 0.583, low: 0.571, high: 0.595 }, 1, 1)).toEqual({
    value: '0.58',
    range: { low: '0.57', high: '0.59' },
  });
  expect(figureOf({ value: 98.4, low: 93.6, high: 103.2 }, 24, 1)).toEqual({
    value: '4.1',
    range: { low: '3.9', high: '4.3' },
  });
});

test('A decimal more is shown where an end of the interval would look like the number.', () => {
  expect(figureOf({ value: 6.3, low: 5.6, high: 6.9 }, 1, 0)).toEqual({
    value: '6.3',
    range: { low: '5.6', high: '6.9' },
  });
  expect(figureOf({ value: 3.06, low: 2.98, high: 3.12 }, 1, 1)).toEqual({
    value: '3.06',
    range: { low: '2.98', high: '3.12' },
  });
});

test('A number that comes out like both ends of its interval stands alone.', () => {
  expect(figureOf({ value: 0.6001, low: 0.5998, high: 0.6004 }, 1, 1)).toEqual({
    value: '0.60',
    range: null,
  });
  expect(figureOf({ value: 0, low: 0, high: 0 }, 0.01, 0)).toEqual({ value: '0', range: null });
});

test('A range whose ends come out alike is never written.', () => {
  const number = fc.double({ min: 0, max: 1e4, noNaN: true });
  fc.assert(
    fc.property(number, number, number, fc.integer({ min: 0, max: 1 }), (one, two, three, least) => {
      const [low, value, high] = [one, two, three].sort((a, b) => a - b) as [number, number, number];
      const { value: text, range } = figureOf({ low, value, high }, 24, least);
      if (range !== null) expect(range.low === text && range.high === text).toBe(false);
    }),
  );
});

test('A number without uncertainty shows the decimals that it has.', () => {
  expect(decimalsFor(100, 0, 0)).toBe(0);
  expect(decimalsFor(2.5, 0, 0)).toBe(1);
  expect(decimalsFor(1 / 3, 1e-17, 0)).toBe(2);
  expect(decimalsFor(3, Number.NaN, 1)).toBe(1);
});

test('A number is never shown as minus zero.', () => {
  expect(formatNumber(-0.001, 1)).toBe('0.0');
});
