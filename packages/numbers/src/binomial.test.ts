import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { binomialCumulative } from './binomial.ts';

describe('the binomial distribution function', () => {
  // Source: recomputed by exact summation with mpmath 1.3 at 40 digits; the largest n with scipy 1.17.
  test.each([
    [0, 10, 0.5, 0.0009765625],
    [3, 10, 0.5, 0.171875],
    [5, 1000, 0.1, 2.556545693059975e-38],
    [50, 1000, 0.1, 5.995167632379602e-9],
    [100, 1000, 0.1, 0.5265990812951649],
    [2, 20, 0.9, 1.5570999999999938e-16],
    [10, 100, 0.5, 1.5316450877189926e-17],
    [499000, 1000000, 0.5, 0.0228041499326948],
  ])('is relatively accurate down to the smallest values: k = %s, n = %s, p = %s', (k, n, p, expected) => {
    expect(Math.abs(binomialCumulative(k, n, p) / expected - 1)).toBeLessThan(2e-12);
  });

  test('is the sum of the probabilities', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }),
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        (n, p) => {
          let probability = (1 - p) ** n;
          let total = 0;
          for (let k = 0; k <= n; k++) {
            total += probability;
            expect(binomialCumulative(k, n, p)).toBeCloseTo(total, 11);
            probability *= ((n - k) / (k + 1)) * (p / (1 - p));
          }
        },
      ),
      { seed: 11 },
    );
  });

  test('is certain at its ends', () => {
    expect(binomialCumulative(-1, 5, 0.3)).toBe(0);
    expect(binomialCumulative(5, 5, 0.3)).toBe(1);
    expect(binomialCumulative(2, 5, 0)).toBe(1);
    expect(binomialCumulative(4, 5, 1)).toBe(0);
    expect(binomialCumulative(0, 0, 0.3)).toBe(1);
  });

  test.each([
    [0.5, 5, 0.3],
    [1, 5.5, 0.3],
    [1, -1, 0.3],
    [1, 5, 1.3],
    [1, 5, Number.NaN],
  ])('is refused at k = %s, n = %s, p = %s', (k, n, p) => {
    expect(() => binomialCumulative(k, n, p)).toThrow(RangeError);
  });
});
