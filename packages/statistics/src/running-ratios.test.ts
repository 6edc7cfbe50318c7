import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ratioInterval } from './ratio-interval.ts';
import { RunningRatios } from './running-ratios.ts';

describe('RunningRatios', () => {
  it('gives the interval that the pairs themselves give, whatever the pairs', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.double({ min: 0, max: 1e5, noNaN: true }), fc.integer({ min: 1, max: 500 })), {
          minLength: 2,
        }),
        (pairs) => {
          const running = new RunningRatios(1);
          for (const [numerator, denominator] of pairs) running.add([numerator], denominator);
          const whole = ratioInterval(
            pairs.map((pair) => pair[0]),
            pairs.map((pair) => pair[1]),
            0.9,
          );
          const found = running.interval(0, 0.9);
          expect(found.value).toBeCloseTo(whole.value, 6);
          expect(found.high).toBeCloseTo(whole.high, 2);
        },
      ),
    );
  });

  it('is exact, without width, where every replication has the same ratio', () => {
    const running = new RunningRatios(2);
    running.add([6, 0], 3);
    running.add([10, 0], 5);
    running.add([0, 0], 0);
    expect(running.interval(0, 0.95)).toEqual({ value: 2, low: 2, high: 2, level: 0.95 });
    expect(running.interval(1, 0.95)).toMatchObject({ value: 0, high: 0 });
  });

  it('refuses a ratio without a denominator', () => {
    const running = new RunningRatios(1);
    running.add([1], 0);
    running.add([1], 0);
    expect(running.hasDenominator).toBe(false);
    expect(() => running.interval(0, 0.95)).toThrow('there is no ratio');
    expect(() => running.add([1], -1)).toThrow('A denominator cannot be -1');
  });
});
