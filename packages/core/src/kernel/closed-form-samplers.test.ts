import { describe, expect, it } from 'vitest';
import {
  ExponentialSampler,
  TriangularSampler,
  UniformSampler,
  WeibullSampler,
} from './closed-form-samplers.ts';

describe('closed-form samplers', () => {
  it('have the medians of the textbooks', () => {
    // Elementary: low and high halved; m ln 2; scale (ln 2)^(1/shape); the mode of a symmetric triangle.
    expect(new UniformSampler(2, 7).sample(0.5)).toBe(4.5);
    expect(new ExponentialSampler(3).sample(0.5)).toBeCloseTo(3 * Math.LN2, 14);
    expect(new WeibullSampler(2, 100).sample(0.5)).toBeCloseTo(100 * Math.sqrt(Math.LN2), 12);
    expect(new TriangularSampler(2, 4, 6).sample(0.5)).toBeCloseTo(4, 14);
  });

  it('keep the digits of the smallest draws', () => {
    const u = 2 ** -33;
    expect(Math.abs(new ExponentialSampler(1).sample(u) / u - 1)).toBeLessThan(1e-9);
    expect(Math.abs(new WeibullSampler(2, 1).sample(u) / Math.sqrt(u) - 1)).toBeLessThan(1e-9);
  });

  it('reach a mode that is at the low or at the high end', () => {
    expect(new TriangularSampler(2, 2, 7).sample(2 ** -33)).toBeCloseTo(2, 8);
    expect(new TriangularSampler(2, 7, 7).sample(1 - 2 ** -33)).toBeCloseTo(7, 8);
    expect(new TriangularSampler(2, 7, 7).sample(0.25)).toBeCloseTo(2 + 5 / 2, 14);
  });
});
