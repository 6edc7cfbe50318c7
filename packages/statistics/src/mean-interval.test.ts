import { inverseNormal } from '@buildweek/numbers';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { meanInterval, replicationsForHalfWidth, replicationsForRelativeError } from './mean-interval.ts';
import { mean, standardDeviation, variance } from './summary.ts';
import { draws } from './test-data/draws.ts';

/**
 * Average delay of ten days at a bank. Source: A. M. Law and W. D. Kelton, Simulation Modeling and Analysis, third
 * edition, chapter 9 (data from memory; the book gives 2.03 ± 0.32, and 16 and 27 replications).
 */
const DELAYS = [1.53, 1.66, 1.24, 2.34, 2.0, 1.69, 2.69, 2.86, 1.7, 2.6];

describe('the interval of a mean over replications', () => {
  test('agrees with the published example of ten replications', () => {
    expect(mean(DELAYS)).toBeCloseTo(2.031, 12);
    expect(variance(DELAYS)).toBeCloseTo(0.309098888888889, 12);
    expect(meanInterval(DELAYS, 0.9).high - 2.031).toBeCloseTo(0.322283404941779, 10);
    expect(2.031 - meanInterval(DELAYS, 0.95).low).toBeCloseTo(0.397714565181544, 10);
  });

  test('contains its own value in the middle, and grows with the level', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -1e3, max: 1e3, noNaN: true }), { minLength: 2, maxLength: 40 }),
        fc.double({ min: 0.1, max: 0.99, noNaN: true }),
        fc.double({ min: 0.1, max: 0.99, noNaN: true }),
        (values, first, second) => {
          const narrow = meanInterval(values, Math.min(first, second));
          const wide = meanInterval(values, Math.max(first, second));
          expect(narrow.value).toBe(mean(values));
          expect((narrow.low + narrow.high) / 2).toBeCloseTo(narrow.value, 8);
          expect(wide.low).toBeLessThanOrEqual(narrow.low);
          expect(wide.high).toBeGreaterThanOrEqual(narrow.high);
        },
      ),
      { seed: 1 },
    );
  });

  test('covers 95 % of the time for normal values', () => {
    const draw = draws('mean interval');
    let covered = 0;
    for (let repetition = 0; repetition < 2000; repetition++) {
      const { low, high } = meanInterval(
        Array.from({ length: 20 }, () => inverseNormal(draw())),
        0.95,
      );
      if (low <= 0 && high >= 0) covered++;
    }
    // Source: binomial limits at 99.9 % for 2000 intervals of level 0.95.
    expect(covered).toBeGreaterThanOrEqual(1867);
    expect(covered).toBeLessThanOrEqual(1931);
  });

  test('is refused for one value, and for impossible levels', () => {
    expect(() => meanInterval([1], 0.95)).toThrow(/At least 2/);
    for (const level of [0, 1, Number.NaN]) expect(() => meanInterval([1, 2], level)).toThrow(/level/);
    expect(() => meanInterval([1, Number.POSITIVE_INFINITY], 0.95)).toThrow(/not finite/);
  });
});

describe('the number of replications', () => {
  test('agrees with the published example', () => {
    expect(replicationsForHalfWidth(DELAYS, 0.9, 0.25)).toBe(16);
    expect(replicationsForRelativeError(DELAYS, 0.9, 0.1)).toBe(27);
  });

  test('is what there is, when that is enough', () => {
    expect(replicationsForHalfWidth(DELAYS, 0.9, 0.33)).toBe(10);
    expect(replicationsForHalfWidth([4, 4], 0.95, 0.001)).toBe(2);
  });

  test('grows with the square of the precision', () => {
    const ratio =
      replicationsForHalfWidth(DELAYS, 0.95, 0.001) / replicationsForHalfWidth(DELAYS, 0.95, 0.01);
    expect(ratio).toBeCloseTo(100, 0);
    // With very many replications t is the normal quantile: n = (z s / h)².
    const expected = (inverseNormal(0.975) * standardDeviation(DELAYS) * 1000) ** 2;
    expect(Math.abs(replicationsForHalfWidth(DELAYS, 0.95, 0.001) - expected)).toBeLessThan(4);
  });

  test('is refused for a half width that no number reaches', () => {
    expect(() => replicationsForHalfWidth(DELAYS, 0.9, 0)).toThrow(/above 0/);
    expect(() => replicationsForRelativeError([-1, 1], 0.9, 0.1)).toThrow(/above 0/);
  });
});
