import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { meanInterval } from './mean-interval.ts';
import { ratioInterval } from './ratio-interval.ts';
import { draws } from './test-data/draws.ts';
import { timesInSystem } from './test-data/queue.ts';

const pair = fc.tuple(fc.double({ min: -100, max: 100, noNaN: true }), fc.integer({ min: 1, max: 50 }));
const pairs = fc.array(pair, { minLength: 2, maxLength: 30 });

describe('the interval of a ratio over replications', () => {
  test('is that of the mean when every replication has as many jobs', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -100, max: 100, noNaN: true }), { minLength: 2 }), (values) => {
        const ratio = ratioInterval(
          values.map((value) => 8 * value),
          values.map(() => 8),
          0.95,
        );
        const mean = meanInterval(values, 0.95);
        expect(ratio.value).toBeCloseTo(mean.value, 9);
        expect(ratio.low).toBeCloseTo(mean.low, 6);
        expect(ratio.high).toBeCloseTo(mean.high, 6);
      }),
      { seed: 1 },
    );
  });

  test('is the plain ratio of the totals, in its middle', () => {
    fc.assert(
      fc.property(pairs, (own) => {
        const numerators = own.map(([numerator]) => numerator);
        const denominators = own.map(([, denominator]) => denominator);
        const { value, low, high } = ratioInterval(numerators, denominators, 0.9);
        const total = (values: number[]) => values.reduce((sum, one) => sum + one, 0);
        expect(value).toBeCloseTo(total(numerators) / total(denominators), 9);
        expect((low + high) / 2).toBeCloseTo(value, 9);
        expect(high).toBeGreaterThanOrEqual(low);
      }),
      { seed: 2 },
    );
  });

  test('is a point when the ratio is the same in every replication, however many jobs it had', () => {
    const { value, low, high } = ratioInterval([6, 30, 0, 12], [2, 10, 0, 4], 0.95);
    expect([value, low, high]).toEqual([3, 3, 3]);
    expect(ratioInterval([0.75, 0], [0.25, 0], 0.95)).toMatchObject({ value: 3, low: 3, high: 3 });
  });

  test('agrees with a hand calculation', () => {
    // Ratio 12 / 6 = 2; residuals 3 − 2, 4 − 4, 5 − 6 = 1, 0, −1; standard error sqrt(3 · 2 / 2) / 6; t(2) = 4.302653.
    const { value, high } = ratioInterval([3, 4, 5], [1, 2, 3], 0.95);
    expect(value).toBe(2);
    expect(high - value).toBeCloseTo((4.30265272974946 * Math.sqrt(3)) / 6, 10);
  });

  test('covers the mean time in a queue with a random number of jobs in each replication', () => {
    const draw = draws('ratio coverage');
    let covered = 0;
    for (let repetition = 0; repetition < 1000; repetition++) {
      const times = Array.from({ length: 60 }, () => timesInSystem(0.5, 100, draw));
      const { low, high } = ratioInterval(
        times.map((own) => own.reduce((sum, one) => sum + one, 0)),
        times.map((own) => own.length),
        0.95,
      );
      if (low <= 2 && 2 <= high) covered++;
    }
    // 60 replications of length 100 at load 0.5, started in equilibrium; the truth is 1 / (1 − 0.5). Binomial limits
    // at 99.9 % for 1000 intervals of level 0.95 are 926 and 971; the lower is widened by two points for the skewness.
    expect(covered).toBeGreaterThanOrEqual(926 - 20);
    expect(covered).toBeLessThanOrEqual(971);
  });

  test('is refused where there is no ratio', () => {
    expect(() => ratioInterval([1, 2], [0, 0], 0.95)).toThrow(/All denominators are zero/);
    expect(() => ratioInterval([1, 2], [1, -1], 0.95)).toThrow(/negative/);
    expect(() => ratioInterval([1], [1], 0.95)).toThrow(/At least 2/);
    expect(() => ratioInterval([1, 2], [1], 0.95)).toThrow(/Pairs/);
    expect(() => ratioInterval([1, 2], [1, 1], 1)).toThrow(/level/);
  });
});
