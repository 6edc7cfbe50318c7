import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { meanInterval } from './mean-interval.ts';
import { RunningMeans } from './running-means.ts';

describe('RunningMeans', () => {
  it('gives the interval that the values themselves give, whatever the values', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.double({ min: -1e6, max: 1e6, noNaN: true }), fc.integer()), { minLength: 2 }),
        (pairs) => {
          const running = new RunningMeans(2);
          for (const pair of pairs) running.add(pair);
          for (const index of [0, 1]) {
            const whole = meanInterval(
              pairs.map((pair) => pair[index] as number),
              0.9,
            );
            const found = running.interval(index, 0.9);
            const tolerance = 1e-9 * (1 + Math.max(...pairs.map((pair) => Math.abs(pair[index] as number))));
            expect(Math.abs(found.value - whole.value)).toBeLessThan(tolerance);
            expect(Math.abs(found.high - whole.high)).toBeLessThan(tolerance * 20);
          }
        },
      ),
    );
  });

  it('keeps the spread of small values on a large base', () => {
    const running = new RunningMeans(1);
    for (const value of [1e9 + 4, 1e9 + 7, 1e9 + 13, 1e9 + 16]) running.add([value]);
    // Sample variance 30, by hand; t for 3 degrees of freedom at 0.95 is 3.182446 (published tables).
    expect(running.interval(0, 0.95).high - (1e9 + 10)).toBeCloseTo(3.182446 * Math.sqrt(30 / 4), 4);
  });

  it('refuses values that are missing or not finite', () => {
    const running = new RunningMeans(2);
    expect(() => running.add([1])).toThrow('2 values are needed, not 1');
    expect(() => running.add([1, Number.NaN])).toThrow('Value 1 is not finite');
    expect(() => new RunningMeans(1).interval(0, 0.9)).toThrow('At least 2 replications');
  });
});
