import { describe, expect, it } from 'vitest';
import { digamma, trigamma } from './digamma.ts';

const EULER = 0.5772156649015329;

describe('digamma', () => {
  it('has its known values', () => {
    // Source: NIST Digital Library of Mathematical Functions, 5.4.12 to 5.4.15.
    expect(digamma(1)).toBeCloseTo(-EULER, 13);
    expect(digamma(0.5)).toBeCloseTo(-EULER - 2 * Math.LN2, 13);
    expect(digamma(5)).toBeCloseTo(1 + 1 / 2 + 1 / 3 + 1 / 4 - EULER, 13);
    expect(digamma(1000)).toBeCloseTo(Math.log(1000) - 1 / 2000 - 1 / 12e6, 12);
  });

  it('takes only positive numbers', () => {
    for (const wrong of [0, -1, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(() => digamma(wrong)).toThrow(RangeError);
      expect(() => trigamma(wrong)).toThrow(RangeError);
    }
  });
});

describe('trigamma', () => {
  it('has its known values', () => {
    // Source: NIST Digital Library of Mathematical Functions, 5.4.16 and 5.15.5.
    expect(trigamma(1)).toBeCloseTo(Math.PI ** 2 / 6, 12);
    expect(trigamma(0.5)).toBeCloseTo(Math.PI ** 2 / 2, 12);
    expect(trigamma(3)).toBeCloseTo(Math.PI ** 2 / 6 - 1 - 1 / 4, 12);
  });

  it('is the slope of digamma', () => {
    for (const x of [0.3, 2.7, 14, 80]) {
      const step = 1e-4 * x;
      expect(trigamma(x) / ((digamma(x + step) - digamma(x - step)) / (2 * step))).toBeCloseTo(1, 6);
    }
  });
});
