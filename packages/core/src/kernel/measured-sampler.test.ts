import { describe, expect, it } from 'vitest';
import { MeasuredSampler } from './measured-sampler.ts';

describe('MeasuredSampler', () => {
  it('gives each value the same share of the uniform numbers, the shortest first', () => {
    const sampler = new MeasuredSampler([4, 1, 1, 2]);
    expect([0.1, 0.3, 0.6, 0.9].map((u) => sampler.sample(u))).toEqual([1, 1, 2, 4]);
    expect([0.25, 0.5, 0.75].map((u) => sampler.sample(u))).toEqual([1, 2, 4]);
  });

  it('gives the longest to a draw next to 1', () => {
    expect(new MeasuredSampler([3, 5, 7]).sample(1 - 2 ** -53)).toBe(7);
  });

  it('leaves the list that it was given as it was', () => {
    const values = [10, 9, 100];
    expect(new MeasuredSampler(values).sample(0.1)).toBe(9);
    expect(values).toEqual([10, 9, 100]);
  });
});
