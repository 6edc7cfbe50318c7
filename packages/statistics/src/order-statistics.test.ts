import { binomialCumulative } from '@buildweek/numbers';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { quantileRanks, sampleSizeForBound } from './order-statistics.ts';

describe('the distribution-free interval of a quantile', () => {
  // Source: G. J. Hahn and W. Q. Meeker, Statistical Intervals (1991), chapter 5; recomputed with R.
  test.each([
    [10, 0.5, 2, 9, 0.978515625],
    [20, 0.5, 6, 15, 0.958610534667969],
    [30, 0.5, 10, 21, 0.957226054742932],
    [50, 0.5, 18, 33, 0.967160862435732],
    [100, 0.5, 40, 61, 0.964799799782295],
    [50, 0.9, 41, 50, 0.970308289088088],
    [100, 0.9, 84, 96, 0.955690107191223],
    [100, 0.95, 90, 100, 0.982607060712181],
    [200, 0.95, 184, 197, 0.967152163856726],
    [500, 0.95, 465, 485, 0.960498735515962],
    [1000, 0.95, 936, 964, 0.958095268222654],
    [1000, 0.99, 983, 997, 0.976094763497977],
    [59, 0.95, 52, 60, 0.991136257011095],
    [93, 0.95, 84, 93, 0.973578335171866],
  ])('has the published ranks for n = %s, p = %s', (n, p, lower, upper, coverage) => {
    const ranks = quantileRanks(n, p, 0.95);
    expect([ranks.lower, ranks.upper]).toEqual([lower, upper]);
    expect(Math.abs(ranks.coverage - coverage)).toBeLessThan(1e-12);
  });

  test('covers with at least the level, and is as short as both tails allow', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 400 }),
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        fc.double({ min: 0.5, max: 0.999, noNaN: true }),
        (n, p, level) => {
          const { lower, upper, coverage } = quantileRanks(n, p, level);
          expect(coverage).toBeGreaterThanOrEqual(level - 1e-12);
          const tail = (1 - level) / 2;
          expect(binomialCumulative(lower, n, p)).toBeGreaterThan(tail);
          if (upper > 1) expect(1 - binomialCumulative(upper - 2, n, p)).toBeGreaterThan(tail);
        },
      ),
      { seed: 1, numRuns: 500 },
    );
  });

  test('is refused for impossible arguments', () => {
    expect(() => quantileRanks(0, 0.5, 0.95)).toThrow(RangeError);
    expect(() => quantileRanks(10, 1, 0.95)).toThrow(/share/);
    expect(() => quantileRanks(10, 0.5, 0)).toThrow(/level/);
  });
});

describe('the smallest sample for a bound', () => {
  // Source: S. S. Wilks, Annals of Mathematical Statistics 12 (1941), 91–96; 59 and 93 are the classical numbers.
  test('is 59 for the largest value to lie above the 95 % point with 95 %', () => {
    expect(sampleSizeForBound(0.95, 0.95)).toBe(59);
    expect(sampleSizeForBound(0.9, 0.95)).toBe(29);
    expect(sampleSizeForBound(0.99, 0.95)).toBe(299);
  });

  test('is 93 for the second largest, and so for a two-sided tolerance interval', () => {
    expect(sampleSizeForBound(0.95, 0.95, 2)).toBe(93);
    const confidence = (n: number) => 1 - 0.95 ** n - n * 0.05 * 0.95 ** (n - 1);
    expect(confidence(93)).toBeGreaterThanOrEqual(0.95);
    expect(confidence(92)).toBeLessThan(0.95);
  });

  test('is refused for impossible arguments', () => {
    expect(() => sampleSizeForBound(0, 0.95)).toThrow(/share/);
    expect(() => sampleSizeForBound(0.9, 1)).toThrow(/level/);
    expect(() => sampleSizeForBound(0.9, 0.95, 0)).toThrow(RangeError);
  });
});
