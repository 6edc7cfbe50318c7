import type { CountDistribution } from '@buildweek/model';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createCountSampler, meanOfCount, varianceOfCount } from './count-sampler.ts';

const count = fc.integer({ min: 1, max: 500 });
const distribution: fc.Arbitrary<CountDistribution> = fc.oneof(
  count.map((value): CountDistribution => ({ kind: 'fixed', value })),
  fc
    .tuple(count, fc.integer({ min: 0, max: 40 }))
    .map(([low, more]): CountDistribution => ({ kind: 'uniform', low, high: low + more })),
  fc.array(count, { minLength: 1 }).map((values): CountDistribution => ({ kind: 'list', values })),
  fc
    .double({ min: 1, max: 200, noNaN: true })
    .map((mean): CountDistribution => ({ kind: 'geometric', mean })),
);
const uniform = fc.double({ min: 2 ** -33, max: 1 - 2 ** -33, noNaN: true });

describe('createCountSampler', () => {
  it('draws whole numbers from 1 up, never less for a larger u', () => {
    fc.assert(
      fc.property(distribution, uniform, uniform, (counts, first, second) => {
        const sampler = createCountSampler(counts);
        const less = sampler.sample(Math.min(first, second));
        const more = sampler.sample(Math.max(first, second));
        expect(Number.isInteger(less)).toBe(true);
        expect(less).toBeGreaterThanOrEqual(1);
        expect(more).toBeGreaterThanOrEqual(less);
      }),
      { seed: 1, numRuns: 1000 },
    );
  });

  it('gives each whole number from low to high the same share of the uniform numbers', () => {
    const sampler = createCountSampler({ kind: 'uniform', low: 1, high: 12 });
    for (let value = 1; value <= 12; value++) {
      expect(sampler.sample((value - 1 + 1e-9) / 12)).toBe(value);
      expect(sampler.sample((value - 1e-9) / 12)).toBe(value);
    }
    expect(sampler.sample(1 - 2 ** -53)).toBe(12);
  });

  it('gives each entry of a list the same share', () => {
    const sampler = createCountSampler({ kind: 'list', values: [5, 1, 1, 20] });
    expect([0.2, 0.4, 0.6, 0.8].map((u) => sampler.sample(u))).toEqual([1, 1, 5, 20]);
  });

  it('draws the number of trials up to the first success', () => {
    // Chance of more than k trials: (1 − 1/mean)^k; elementary.
    const sampler = createCountSampler({ kind: 'geometric', mean: 4 });
    for (let trials = 1; trials < 30; trials++) {
      const most = 1 - 0.75 ** trials;
      expect(sampler.sample(most - 1e-9)).toBe(trials);
      expect(sampler.sample(most + 1e-9)).toBe(trials + 1);
    }
    expect(createCountSampler({ kind: 'geometric', mean: 1 }).sample(0.999999)).toBe(1);
  });

  it('draws on average what meanOfCount says', () => {
    const draws = 200_000;
    for (const counts of [
      { kind: 'fixed', value: 7 },
      { kind: 'uniform', low: 1, high: 12 },
      { kind: 'list', values: [5, 1, 1, 20] },
      { kind: 'geometric', mean: 3.5 },
    ] satisfies CountDistribution[]) {
      const sampler = createCountSampler(counts);
      let sum = 0;
      for (let draw = 0; draw < draws; draw++) sum += sampler.sample((draw + 0.5) / draws);
      // The midpoint rule on a monotone step function errs by at most the range of values over the draws.
      expect(Math.abs(sum / draws - meanOfCount(counts))).toBeLessThan(1e-3);
    }
  });

  it('refuses what is not a whole number from 1 up', () => {
    const impossible: CountDistribution[] = [
      { kind: 'fixed', value: 0 },
      { kind: 'fixed', value: 2.5 },
      { kind: 'uniform', low: 3, high: 2 },
      { kind: 'uniform', low: 0, high: 2 },
      { kind: 'list', values: [] },
      { kind: 'list', values: [1, 1.5] },
      { kind: 'geometric', mean: 0.5 },
      { kind: 'geometric', mean: Number.POSITIVE_INFINITY },
    ];
    for (const counts of impossible) expect(() => createCountSampler(counts)).toThrow(RangeError);
  });
});

describe('varianceOfCount', () => {
  it.each<[CountDistribution, number]>([
    [{ kind: 'fixed', value: 7 }, 0],
    [{ kind: 'uniform', low: 1, high: 6 }, 35 / 12],
    [{ kind: 'list', values: [1, 1, 4] }, 2],
    [{ kind: 'geometric', mean: 4 }, 12],
  ])('of %j is %s', (counts, expected) => {
    expect(varianceOfCount(counts)).toBeCloseTo(expected, 12);
  });
});
