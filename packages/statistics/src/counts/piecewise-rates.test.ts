import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { piecewiseRates } from './piecewise-rates.ts';

describe('dividing counts into stretches of one rate', () => {
  test('finds where the rate changes', () => {
    const counts = [0, 1, 0, 9, 10, 11, 10, 3, 2, 3];
    const divisions = piecewiseRates(counts, 1, 3);
    expect(divisions[2]?.pieces).toEqual([
      { from: 0, to: 3 },
      { from: 3, to: 7 },
      { from: 7, to: 10 },
    ]);
    expect(divisions[0]?.pieces).toEqual([{ from: 0, to: 10 }]);
  });

  test('gives the best division of all', () => {
    const deviance = (counts: readonly number[]): number => {
      const events = counts.reduce((sum, count) => sum + count, 0);
      return events === 0 ? 0 : -2 * events * Math.log(events / counts.length);
    };
    fc.assert(
      fc.property(fc.array(fc.nat(6), { minLength: 3, maxLength: 9 }), (counts) => {
        let best = Infinity;
        for (let a = 1; a < counts.length - 1; a++) {
          for (let b = a + 1; b < counts.length; b++) {
            best = Math.min(
              best,
              deviance(counts.slice(0, a)) + deviance(counts.slice(a, b)) + deviance(counts.slice(b)),
            );
          }
        }
        expect(piecewiseRates(counts, 1, 3)[2]?.deviance).toBeCloseTo(best, 9);
      }),
    );
  });
});
