import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gammaFunction, logGamma } from './gamma.ts';

describe('the gamma function', () => {
  // Source: recomputed with mpmath 1.3 at 40 digits.
  test.each([
    [1e-20, 46.051701859880914],
    [0.001, 6.907178885383854],
    [0.5, 0.5723649429247001],
    [1.5, -0.12078223763524522],
    [2.5, 0.2846828704729192],
    [9.99, 12.779315214350193],
    [10, 12.80182748008147],
    [100.5, 361.4355404677776],
    [1e10, 220258509288.81058],
  ])('has the logarithm known from high precision at %s', (x, expected) => {
    expect(Math.abs(logGamma(x) - expected)).toBeLessThan(4e-15 * Math.max(1, Math.abs(expected)));
  });

  test.each([
    [0.5, Math.sqrt(Math.PI)],
    [1.25, 0.906402477055477],
    [2.1, 1.0464858468535605],
    [100.5, 9.320963104082718e156],
  ])('has the value known from high precision at %s', (x, expected) => {
    expect(Math.abs(gammaFunction(x) / expected - 1)).toBeLessThan(1e-13);
  });

  test('is the factorial at whole numbers', () => {
    expect([1, 2, 3, 4, 5, 11, 19].map(gammaFunction)).toEqual([1, 1, 2, 6, 24, 3628800, 6402373705728000]);
  });

  test('leaves the range of a double above 171.6', () => {
    // Source: 170! as the product of its factors, from memory 7.257415615307999e306.
    expect(Math.abs(gammaFunction(171) / 7.257415615307999e306 - 1)).toBeLessThan(1e-13);
    expect(gammaFunction(172)).toBe(Number.POSITIVE_INFINITY);
  });

  test('obeys its recurrence', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 100, noNaN: true }), (x) => {
        expect(Math.abs(logGamma(x + 1) - logGamma(x) - Math.log(x))).toBeLessThan(1e-12);
      }),
      { seed: 4 },
    );
  });

  test.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])('is refused at %s', (x) => {
    expect(() => logGamma(x)).toThrow(RangeError);
    expect(() => gammaFunction(x)).toThrow(RangeError);
  });
});
