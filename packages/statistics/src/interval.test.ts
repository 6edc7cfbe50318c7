import { describe, expect, test } from 'vitest';
import { estimateOver } from './interval.ts';
import { meanInterval } from './mean-interval.ts';

describe('an estimate over replications', () => {
  test('carries its interval, its level and the number of replications, and nothing else', () => {
    const values = Array.from({ length: 20 }, (_, index) => index);
    const { value, low, high } = meanInterval(values, 0.9);
    expect(estimateOver(20, () => meanInterval(values, 0.9))).toEqual({
      kind: 'estimate',
      value,
      low,
      high,
      level: 0.9,
      replications: 20,
    });
  });

  test('is refused with fewer than 20 replications, before anything is computed', () => {
    const compute = () => {
      throw new Error('This must not be called');
    };
    expect(estimateOver(19, compute)).toEqual({
      kind: 'refused',
      reason: 'An interval needs at least 20 replications; there are 19.',
    });
  });
});
