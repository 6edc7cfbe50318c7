import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inverseNormal, normalCumulative } from './normal.ts';

describe('the normal distribution', () => {
  // Source: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.1, recomputed with R.
  test.each([
    [0.9, 1.2815515655446],
    [0.95, 1.64485362695147],
    [0.975, 1.95996398454005],
    [0.99, 2.32634787404084],
    [0.995, 2.5758293035489],
  ])('has the published quantile at %s', (p, expected) => {
    expect(Math.abs(inverseNormal(p) - expected)).toBeLessThan(1e-13);
    expect(Math.abs(inverseNormal(1 - p) + expected)).toBeLessThan(1e-13);
  });

  // Source: recomputed with scipy 1.17. The three rational functions of AS 241 are each met.
  test.each([
    [1e-300, -37.0470962993612],
    [1e-20, -9.262340089798409],
    [1e-5, -4.264890793922825],
    [0.075, -1.4395314709384563],
    [0.076, -1.4325027208258116],
    [0.5, 0],
  ])('has the quantile known from high precision at %s', (p, expected) => {
    expect(Math.abs(inverseNormal(p) - expected)).toBeLessThanOrEqual(1e-15 * Math.abs(expected));
  });

  // Source: recomputed with mpmath 1.3 at 40 digits.
  test.each([
    [-37, 5.725571222524577e-300],
    [-10, 7.619853024160525e-24],
    [-3, 0.0013498980316300946],
    [-1, 0.15865525393145705],
    [0.5, 0.6914624612740131],
    [2.5, 0.993790334674224],
    [6, 0.9999999990134124],
  ])('has the distribution function known from high precision at %s', (x, expected) => {
    expect(Math.abs(normalCumulative(x) / expected - 1)).toBeLessThan(1e-13);
  });

  test('is inverted by its quantile', () => {
    fc.assert(
      fc.property(fc.double({ min: -30, max: 5, noNaN: true }), (x) => {
        const p = normalCumulative(x);
        // Above zero the distance of p from 1 has fewer digits than x.
        const digitsLost = x > 0 ? 1e-15 / normalCumulative(-x) : 1e-12;
        expect(Math.abs(inverseNormal(p) - x)).toBeLessThanOrEqual(digitsLost + 1e-13 * Math.abs(x));
      }),
      { seed: 5 },
    );
  });

  test('has a distribution function of 0 and 1 at the ends', () => {
    expect(normalCumulative(Number.NEGATIVE_INFINITY)).toBe(0);
    expect(normalCumulative(Number.POSITIVE_INFINITY)).toBe(1);
    expect(normalCumulative(0)).toBe(0.5);
    expect(() => normalCumulative(Number.NaN)).toThrow(RangeError);
  });

  test.each([0, 1, -0.5, 1.5, Number.NaN])('has no quantile at p = %s', (p) => {
    expect(() => inverseNormal(p)).toThrow(RangeError);
  });
});
