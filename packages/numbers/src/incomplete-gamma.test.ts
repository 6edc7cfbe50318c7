import { describe, expect, it } from 'vitest';
import { gammaQuantile } from './gamma-quantile.ts';
import { chiSquareUpper, incompleteGamma } from './incomplete-gamma.ts';

describe('incompleteGamma', () => {
  it('is the exponential law for shape 1, and the Poisson sum for whole shapes', () => {
    // Source: NIST Digital Library of Mathematical Functions, 8.4.9 and 8.4.10.
    for (const x of [0.01, 0.5, 3, 20]) {
      expect(incompleteGamma(1, x).upper / Math.exp(-x)).toBeCloseTo(1, 12);
      const poisson = Math.exp(-x) * (1 + x + x ** 2 / 2);
      expect(incompleteGamma(3, x).upper / poisson).toBeCloseTo(1, 12);
    }
  });

  it('has both tails add up to 1, and its ends', () => {
    for (const [a, x] of [
      [0.3, 0.2],
      [5, 4],
      [200, 230],
      [1e4, 9.9e3],
    ] as const) {
      const { lower, upper } = incompleteGamma(a, x);
      expect(lower + upper).toBeCloseTo(1, 12);
    }
    expect(incompleteGamma(2, 0)).toEqual({ lower: 0, upper: 1 });
    expect(incompleteGamma(2, Number.POSITIVE_INFINITY)).toEqual({ lower: 1, upper: 0 });
  });

  it('is undone by the quantile', () => {
    for (const shape of [0.4, 3, 60]) {
      for (const p of [0.01, 0.5, 0.99])
        expect(incompleteGamma(shape, gammaQuantile(p, shape)).lower).toBeCloseTo(p, 7);
    }
  });

  it('refuses what it is not defined for', () => {
    expect(() => incompleteGamma(0, 1)).toThrow(RangeError);
    expect(() => incompleteGamma(1, -1)).toThrow(RangeError);
  });
});

describe('chiSquareUpper', () => {
  it('has the points of every table', () => {
    // Source: R, pchisq (from memory: qchisq(0.95, 1) = 3.841459, qchisq(0.95, 10) = 18.30704).
    expect(chiSquareUpper(3.841458820694124, 1)).toBeCloseTo(0.05, 10);
    expect(chiSquareUpper(18.307038053275146, 10)).toBeCloseTo(0.05, 10);
  });
});
