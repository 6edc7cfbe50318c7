import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type QuantileType, quantile, quantileRank } from './quantile.ts';

const TYPES: readonly QuantileType[] = [1, 2, 3, 4, 5, 6, 7, 8, 9];
const TEN = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10];
const share = fc.double({ min: 0.001, max: 0.999, noNaN: true });
const sorted = fc
  .array(fc.double({ min: -1000, max: 1000, noNaN: true }), { minLength: 1, maxLength: 40 })
  .map((values) => values.sort((first, second) => first - second));

describe('a sample quantile', () => {
  // Source: R. J. Hyndman and Y. Fan, The American Statistician 50 (1996), 361–365; recomputed with R.
  test.each([
    ['1 to 10', TEN, 0.95, [10, 10, 10, 9.5, 10, 10, 9.55, 10, 10]],
    ['1 to 10', TEN, 0.25, [3, 3, 2, 2.5, 3, 2.75, 3.25, 2.91666666666667, 2.9375]],
    [
      'a small odd set',
      [2, 3, 5, 8, 13, 21, 34],
      0.9,
      [34, 34, 21, 24.9, 31.4, 34, 26.2, 33.1333333333333, 32.7],
    ],
  ])('agrees with the nine published definitions on %s', (_, values, p, expected) => {
    TYPES.forEach((type, index) => {
      expect(quantile(values, p, type)).toBeCloseTo(expected[index] ?? Number.NaN, 12);
    });
  });

  test('of 1 to 5 at 0.9 is 4.6 by definition 7', () => {
    expect(quantile([1, 2, 3, 4, 5], 0.9, 7)).toBeCloseTo(4.6, 14);
  });

  // Definitions 1 to 3 at a share that falls on a value: the value, the middle of it and the next, the even rank.
  test('by definitions 1 to 3 differs where p falls between two values', () => {
    expect(([1, 2, 3] as const).map((type) => quantile(TEN, 0.5, type))).toEqual([5, 5.5, 5]);
    expect(([1, 2, 3] as const).map((type) => quantile(TEN, 0.3, type))).toEqual([3, 3.5, 3]);
    expect(([1, 2, 3] as const).map((type) => quantile(TEN, 0.35, type))).toEqual([4, 4, 4]);
    expect(([1, 2, 3] as const).map((type) => quantile(TEN, 0.45, type))).toEqual([5, 5, 4]);
  });

  test('rises with p', () => {
    fc.assert(
      fc.property(sorted, share, share, fc.constantFrom(...TYPES), (values, first, second, type) => {
        const low = quantile(values, Math.min(first, second), type);
        const high = quantile(values, Math.max(first, second), type);
        expect(high).toBeGreaterThanOrEqual(low - 1e-9);
      }),
      { seed: 1, numRuns: 1000 },
    );
  });

  test('lies between the smallest and the largest value', () => {
    fc.assert(
      fc.property(sorted, share, fc.constantFrom(...TYPES), (values, p, type) => {
        const result = quantile(values, p, type);
        expect(result).toBeGreaterThanOrEqual(values[0] ?? Number.NaN);
        expect(result).toBeLessThanOrEqual(values[values.length - 1] ?? Number.NaN);
      }),
      { seed: 2, numRuns: 1000 },
    );
  });

  test('by definition 1 is the smallest value that a share p of the values do not exceed', () => {
    fc.assert(
      fc.property(sorted, fc.integer({ min: 1, max: 999 }), (values, thousandths) => {
        const result = quantile(values, thousandths / 1000, 1);
        const upTo = values.filter((value) => value <= result).length;
        const below = values.filter((value) => value < result).length;
        expect(1000 * upTo).toBeGreaterThanOrEqual(thousandths * values.length);
        expect(1000 * below).toBeLessThan(thousandths * values.length);
      }),
      { seed: 3, numRuns: 1000 },
    );
  });

  test('may be infinite, and is so only where it must', () => {
    const values = [1, 2, 3, Number.POSITIVE_INFINITY];
    expect(quantile(values, 0.75, 1)).toBe(3);
    expect(quantile(values, 0.76, 1)).toBe(Number.POSITIVE_INFINITY);
    expect(quantile(values, 2 / 3, 7)).toBe(3);
    expect(quantile(values, 0.7, 7)).toBe(Number.POSITIVE_INFINITY);
  });

  test('is refused without values, and at 0 and 1', () => {
    expect(() => quantile([], 0.5, 7)).toThrow(/at least one value/);
    for (const p of [0, 1, Number.NaN]) expect(() => quantile([1], p, 7)).toThrow(/share/);
  });
});

describe('the rank of a quantile', () => {
  test('is not moved by the rounding of p', () => {
    expect(quantileRank(20, 0.95)).toBe(19);
    expect(quantileRank(10, 0.3)).toBe(3);
    expect(quantileRank(1e6, 0.9)).toBe(900_000);
    expect(quantileRank(100, 0.07)).toBe(7);
    expect(quantileRank(100, 0.071)).toBe(8);
  });
});
