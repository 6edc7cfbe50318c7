import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createPoissonArrivals, createRenewalArrivals } from './arrivals.ts';
import { MILLISECONDS_PER_HOUR as HOUR } from './clock.ts';
import { createLocalTime } from './local-time.ts';
import { createStream } from './streams.ts';

const ONE = { kind: 'fixed', value: 1 } as const;

describe('createRenewalArrivals', () => {
  it('puts one gap behind the other, from the start of the plan on', () => {
    const arrivals = createRenewalArrivals({
      kind: 'renewal',
      gap: { kind: 'constant', value: 1.25 },
      jobsPerArrival: ONE,
    });
    expect([arrivals.next(0.1), arrivals.next(0.7), arrivals.next(0.3)].map((time) => time / HOUR)).toEqual([
      1.25, 2.5, 3.75,
    ]);
  });

  it('is Poisson when the gaps are exponential', () => {
    const stream = createStream('spring', 0, 'arrivals', 'lens ring');
    const gaps = createRenewalArrivals({
      kind: 'renewal',
      gap: { kind: 'exponential', mean: 12 },
      jobsPerArrival: ONE,
    });
    const even = createPoissonArrivals(
      { kind: 'poisson', perWeek: 14, profile: null, growthPerMonth: 0, jobsPerArrival: ONE },
      createLocalTime([]),
    );
    for (let arrival = 0; arrival < 2000; arrival++) {
      const u = stream();
      expect(Math.abs(gaps.next(u) / even.next(u) - 1)).toBeLessThan(1e-12);
    }
  });
});

describe('Arrivals', () => {
  it('never come earlier for a larger draw', () => {
    const uniform = fc.double({ min: 2 ** -33, max: 1 - 2 ** -33, noNaN: true });
    fc.assert(
      fc.property(fc.array(uniform, { maxLength: 20 }), uniform, uniform, (before, first, second) => {
        const open = (): ReturnType<typeof createPoissonArrivals> =>
          createPoissonArrivals(
            {
              kind: 'poisson',
              perWeek: 20,
              profile: [
                { fromHour: 8, toHour: 16, weight: 3 },
                { fromHour: 32, toHour: 40, weight: 1 },
              ],
              growthPerMonth: 0.1,
              jobsPerArrival: ONE,
            },
            createLocalTime([{ atHours: 146, localMinusElapsedHours: 1 }]),
          );
        const [less, more] = [open(), open()];
        for (const u of before) expect(less.next(u)).toBe(more.next(u));
        expect(less.next(Math.min(first, second))).toBeLessThanOrEqual(more.next(Math.max(first, second)));
      }),
      { seed: 1, numRuns: 500 },
    );
  });
});
