import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { autocorrelation, vonNeumannRatio } from './autocorrelation.ts';
import { mean } from './summary.ts';
import { draws } from './test-data/draws.ts';
import { NILE } from './test-data/nile.ts';

describe('the autocorrelation of a series', () => {
  // Source: R, acf(Nile); recomputed.
  test('agrees with the published values on the flow of the Nile', () => {
    expect(NILE.length).toBe(100);
    expect(mean(NILE)).toBeCloseTo(919.35, 12);
    const expected = [
      0.498408184133029, 0.384576903904873, 0.327860437522546, 0.239191169941486, 0.22842198672084,
    ];
    expected.forEach((value, index) => {
      expect(autocorrelation(NILE, index + 1)).toBeCloseTo(value, 13);
    });
  });

  test('is 1 at lag 0 and never above 1', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -100, max: 100, noNaN: true }), { minLength: 2, maxLength: 30 }),
        fc.nat(29),
        (series, lag) => {
          fc.pre(lag < series.length && new Set(series.map((value) => value.toFixed(6))).size > 1);
          expect(autocorrelation(series, 0)).toBe(1);
          expect(Math.abs(autocorrelation(series, lag))).toBeLessThanOrEqual(1);
        },
      ),
      { seed: 1 },
    );
  });

  test('refuses a lag outside the series', () => {
    for (const lag of [-1, 1.5, 3]) expect(() => autocorrelation([1, 2, 3], lag)).toThrow(/lag/);
  });
});

describe('the ratio of von Neumann', () => {
  test('agrees with the recomputed value on the flow of the Nile', () => {
    expect(vonNeumannRatio(NILE)).toBeCloseTo(0.977637656189556, 13);
  });

  test('is near 2 for independent values', () => {
    const draw = draws('von Neumann');
    const series = Float64Array.from({ length: 10_000 }, draw);
    // Standard error 2 / sqrt(n) = 0.02; four of them.
    expect(Math.abs(vonNeumannRatio(series) - 2)).toBeLessThan(0.08);
  });

  test('is small for a steady rise', () => {
    expect(vonNeumannRatio([1, 2, 3, 4])).toBeCloseTo(3 / 5, 14);
  });
});
