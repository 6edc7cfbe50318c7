import { describe, expect, it } from 'vitest';
import { waitToBatch } from './batching.ts';

describe('waitToBatch', () => {
  it('is half of what the first of a batch waits', () => {
    // Source: Hopp and Spearman, "Factory Physics", chapter 9: 4 parts an hour, 10 to a build.
    expect(waitToBatch(10, 4)).toBeCloseTo(1.125, 12);
    expect(waitToBatch(1, 4)).toBe(0);
  });
});
