import { createCountSampler } from '@buildweek/core';
import type { CountDistribution } from '@buildweek/model';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { meanShareOfBatch } from './expected-count.ts';

/** The mean over a fine grid of equally likely draws. */
function byCounting(quantity: CountDistribution, capacity: number): number {
  const sampler = createCountSampler(quantity);
  const draws = 100_000;
  let sum = 0;
  for (let draw = 0; draw < draws; draw++) {
    sum += Math.min(1, sampler.sample((draw + 0.5) / draws) / capacity);
  }
  return sum / draws;
}

const anyQuantity: fc.Arbitrary<CountDistribution> = fc.oneof(
  fc.integer({ min: 1, max: 30 }).map((value) => ({ kind: 'fixed' as const, value })),
  fc
    .tuple(fc.integer({ min: 1, max: 20 }), fc.integer({ min: 0, max: 20 }))
    .map(([low, width]) => ({ kind: 'uniform' as const, low, high: low + width })),
  fc
    .array(fc.integer({ min: 1, max: 30 }), { minLength: 1, maxLength: 8 })
    .map((values) => ({ kind: 'list' as const, values })),
  fc.double({ min: 1.5, max: 12, noNaN: true }).map((mean) => ({ kind: 'geometric' as const, mean })),
);

describe('meanShareOfBatch', () => {
  it('is the mean share for a few jobs worked by hand', () => {
    expect(meanShareOfBatch({ kind: 'fixed', value: 3 }, 12)).toBe(0.25);
    expect(meanShareOfBatch({ kind: 'fixed', value: 30 }, 12)).toBe(1);
    // 1 to 4 pieces at 2 a batch: 1/2, 1, 1, 1.
    expect(meanShareOfBatch({ kind: 'uniform', low: 1, high: 4 }, 2)).toBe(0.875);
  });

  it('agrees with counting, for any number of pieces and any capacity', () => {
    fc.assert(
      fc.property(anyQuantity, fc.double({ min: 0.5, max: 40, noNaN: true }), (quantity, capacity) => {
        expect(meanShareOfBatch(quantity, capacity)).toBeCloseTo(byCounting(quantity, capacity), 3);
      }),
      { numRuns: 60 },
    );
  });
});
