import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { onePeriodInterval } from './prediction.ts';
import { draws } from './test-data/draws.ts';

const counting = (count: number) => Array.from({ length: count }, (_, index) => index + 1);

describe('what one future replication may bring', () => {
  // Coverage (u − l) / (R + 1): G. J. Hahn and W. Q. Meeker, Statistical Intervals (1991), section 5.4.
  test.each([
    [20, 0.9, 1, 20],
    [39, 0.9, 2, 38],
    [39, 0.95, 1, 39],
    [199, 0.9, 10, 190],
    [999, 0.95, 25, 975],
  ])('lies between these order statistics: %s replications at %s', (replications, level, low, high) => {
    expect(onePeriodInterval(counting(replications), level)).toEqual({
      kind: 'prediction',
      low,
      high,
      level,
      replications,
    });
    expect((high - low) / (replications + 1)).toBeGreaterThanOrEqual(level);
  });

  test('is as short as the level allows', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 20, max: 2000 }),
        fc.double({ min: 0.3, max: 0.95, noNaN: true }),
        (count, level) => {
          const result = onePeriodInterval(counting(count), level);
          if (result.kind !== 'prediction') {
            expect((count - 1) / (count + 1)).toBeLessThan(level);
            return;
          }
          expect((result.high - result.low) / (count + 1)).toBeGreaterThanOrEqual(level - 1e-9);
          if (result.high - result.low >= 2) {
            expect((result.high - result.low - 2) / (count + 1)).toBeLessThan(level + 1e-9);
          }
        },
      ),
      { seed: 1, numRuns: 500 },
    );
  });

  test('is refused with fewer than 20 replications', () => {
    expect(onePeriodInterval(counting(19), 0.9)).toEqual({
      kind: 'refused',
      reason: 'An interval needs at least 20 replications; there are 19.',
    });
  });

  test('is refused when the level needs more replications, and says how many', () => {
    expect(onePeriodInterval(counting(38), 0.95)).toEqual({
      kind: 'refused',
      reason: 'A range that holds one period with 95 % needs at least 39 replications; there are 38.',
    });
  });

  test('is never when the upper limit lies beyond the end', () => {
    const values = [...counting(19), Number.POSITIVE_INFINITY];
    expect(onePeriodInterval(values, 0.9)).toEqual({
      kind: 'never',
      reason: 'In at least 1 of 20 replications the value lies beyond the end of what was played.',
    });
    expect(onePeriodInterval([...counting(39), Number.POSITIVE_INFINITY], 0.9).kind).toBe('prediction');
  });

  test('does not depend on the order of the replications, nor change them', () => {
    const values = [...counting(30)].reverse();
    expect(onePeriodInterval(values, 0.9)).toEqual(onePeriodInterval(counting(30), 0.9));
    expect(values[0]).toBe(30);
  });

  test('holds the next replication as often as it says', () => {
    const draw = draws('prediction');
    let held = 0;
    for (let repetition = 0; repetition < 2000; repetition++) {
      const result = onePeriodInterval(
        Array.from({ length: 39 }, () => -Math.log(draw())),
        0.95,
      );
      const next = -Math.log(draw());
      if (result.kind === 'prediction' && result.low <= next && next <= result.high) held++;
    }
    // Exactly 38/40; binomial limits at 99.9 % for 2000.
    expect(held).toBeGreaterThanOrEqual(1867);
    expect(held).toBeLessThanOrEqual(1931);
  });

  test('wants a replication without a value to be left out', () => {
    expect(() => onePeriodInterval([...counting(30), Number.NaN], 0.9)).toThrow(/left out/);
    expect(() => onePeriodInterval(counting(30), 1)).toThrow(/level/);
  });
});
