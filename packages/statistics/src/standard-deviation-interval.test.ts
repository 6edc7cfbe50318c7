import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { normalDeviationInterval, pooledDeviationInterval } from './standard-deviation-interval.ts';
import { moments, standardDeviation } from './summary.ts';
import { draws } from './test-data/draws.ts';

const jobs = fc.uniqueArray(fc.integer({ min: 0, max: 1000 }), { minLength: 2, maxLength: 20 });

describe('the interval of the standard deviation of normal values', () => {
  test('agrees with the published example of ten replications', () => {
    // Source: A. M. Law and W. D. Kelton, Simulation Modeling and Analysis, third edition, chapter 9 (data from memory).
    const delays = [1.53, 1.66, 1.24, 2.34, 2.0, 1.69, 2.69, 2.86, 1.7, 2.6];
    const { value, low, high } = normalDeviationInterval(delays, 0.95);
    expect(value).toBe(standardDeviation(delays));
    expect(low).toBeCloseTo(0.382413418931828, 8);
    expect(high).toBeCloseTo(1.01497833301346, 8);
  });
});

describe('the interval of the standard deviation over all jobs', () => {
  test('stands around the standard deviation of the pooled jobs', () => {
    fc.assert(
      fc.property(fc.array(jobs, { minLength: 3, maxLength: 10 }), (replications) => {
        const { value, low, high } = pooledDeviationInterval(replications.map(moments), 0.95);
        expect(value).toBeCloseTo(standardDeviation(replications.flat()), 8);
        expect(low).toBeLessThanOrEqual(value);
        expect(high).toBeGreaterThanOrEqual(value);
        expect(low).toBeGreaterThan(0);
      }),
      { seed: 1 },
    );
  });

  test('is the jackknife as one would carry it out by hand', () => {
    const replications = [[1, 4], [2, 7, 9], [3], [5, 6, 8, 20]];
    const logarithms = replications.map((_, left) =>
      Math.log(standardDeviation(replications.filter((__, index) => index !== left).flat())),
    );
    const half = 3.18244630528371 * Math.sqrt(3 * (3 / 4) * standardDeviation(logarithms) ** 2);
    const { value, high } = pooledDeviationInterval(replications.map(moments), 0.95);
    expect(Math.log(high / value)).toBeCloseTo(half, 9);
  });

  test('needs no more than two jobs beside any one replication', () => {
    const { value, low, high } = pooledDeviationInterval([moments([1]), moments([2]), moments([6])], 0.95);
    expect(value).toBeCloseTo(Math.sqrt(7), 12);
    expect(low).toBeLessThan(value);
    expect(high).toBeGreaterThan(value);
  });

  test('covers the truth when replications have means of their own', () => {
    const draw = draws('deviation coverage');
    let covered = 0;
    // Uniform replication means on ±1 and uniform jobs on ±1 about them: variance 1/3 + 1/3.
    const truth = Math.sqrt(2 / 3);
    for (let repetition = 0; repetition < 1000; repetition++) {
      const replications = Array.from({ length: 40 }, () => {
        const centre = 2 * draw() - 1;
        return moments(Array.from({ length: 10 }, () => centre + 2 * draw() - 1));
      });
      const { low, high } = pooledDeviationInterval(replications, 0.95);
      if (low <= truth && truth <= high) covered++;
    }
    // Binomial limits at 99.9 % for 1000 intervals of level 0.95.
    expect(covered).toBeGreaterThanOrEqual(926);
    expect(covered).toBeLessThanOrEqual(971);
  });

  test('is zero when no job differs from another', () => {
    const same = [moments([3, 3]), moments([3]), moments([3, 3, 3])];
    expect(pooledDeviationInterval(same, 0.95)).toEqual({ value: 0, low: 0, high: 0, level: 0.95 });
  });

  test('is refused where leaving one replication out leaves nothing', () => {
    expect(() => pooledDeviationInterval([moments([1, 2])], 0.95)).toThrow(/At least 2 replications/);
    expect(() => pooledDeviationInterval([moments([1, 2]), moments([])], 0.95)).toThrow(/two jobs/);
    expect(() => pooledDeviationInterval([moments([1, 2]), moments([1, 1]), moments([1, 1])], 0.95)).toThrow(
      /spread/,
    );
  });
});
