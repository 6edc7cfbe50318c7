import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { regularizedBeta } from './beta.ts';

const parameter = fc.double({ min: -2, max: 5, noNaN: true }).map((exponent) => 10 ** exponent);

describe('the regularized incomplete beta function', () => {
  // Source: recomputed with mpmath 1.3 at 40 digits; the two with large parameters with scipy 1.17.
  test.each([
    [0.3, 2, 5, 0.579825],
    [0.01, 20, 20, 5.746696726347245e-30],
    [1e-10, 20, 100, 2.455185584449162e-178],
    [0.99999, 1e6, 0.1, 5.547712368765312e-7],
    [0.1, 1e5, 9e5, 0.5003546154275595],
  ])('has the value known from high precision at x = %s, a = %s, b = %s', (x, a, b, expected) => {
    expect(Math.abs(regularizedBeta(x, a, b) / expected - 1)).toBeLessThan(2e-11);
  });

  test('is a power where one parameter is 1', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        fc.double({ min: 0.1, max: 30, noNaN: true }),
        (x, a) => {
          expect(regularizedBeta(x, a, 1)).toBeCloseTo(x ** a, 13);
          expect(regularizedBeta(x, 1, a)).toBeCloseTo(1 - (1 - x) ** a, 13);
        },
      ),
      { seed: 6 },
    );
  });

  test('adds up to 1 with its mirror image', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1024 }), parameter, parameter, (part, a, b) => {
        const x = part / 1024;
        expect(regularizedBeta(x, a, b) + regularizedBeta(1 - x, b, a)).toBeCloseTo(1, 11);
      }),
      { seed: 7, numRuns: 500 },
    );
  });

  test.each([
    [-0.1, 1, 1],
    [1.1, 1, 1],
    [0.5, 0, 1],
    [0.5, 1, -1],
    [0.5, Number.POSITIVE_INFINITY, 1],
    [Number.NaN, 1, 1],
  ])('is refused at x = %s, a = %s, b = %s', (x, a, b) => {
    expect(() => regularizedBeta(x, a, b)).toThrow(RangeError);
  });
});
