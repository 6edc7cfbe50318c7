import { describe, expect, test } from 'vitest';
import { meanInterval } from './mean-interval.ts';
import { sequentialPrecision } from './precision.ts';
import { draws } from './test-data/draws.ts';

const around = (value: number, half: number) => ({
  value,
  low: value - half,
  high: value + half,
  level: 0.95,
});

describe('the precision of an interval', () => {
  test('is reached when the half width is at most the share of the value that was asked for', () => {
    expect(sequentialPrecision(around(10, 0.5), 40, 0.05)).toEqual({
      reached: true,
      relativeHalfWidth: 0.05,
      moreReplications: 0,
    });
    expect(sequentialPrecision(around(-10, 0.5), 40, 0.06).reached).toBe(true);
  });

  test('needs four times the replications for half the width', () => {
    expect(sequentialPrecision(around(10, 1), 40, 0.05)).toEqual({
      reached: false,
      relativeHalfWidth: 0.1,
      moreReplications: 120,
    });
    expect(sequentialPrecision(around(10, 0.500001), 40, 0.05).moreReplications).toBe(1);
  });

  test('cannot be told about a value of zero, unless nothing varies', () => {
    expect(sequentialPrecision(around(0, 1), 40, 0.05)).toEqual({
      reached: false,
      relativeHalfWidth: null,
      moreReplications: null,
    });
    expect(sequentialPrecision(around(0, 0), 40, 0.05).reached).toBe(true);
  });

  test('is refused for a share of zero, and for an interval without an end', () => {
    expect(() => sequentialPrecision(around(10, 1), 40, 0)).toThrow(/above 0/);
    expect(() => sequentialPrecision(around(10, Number.POSITIVE_INFINITY), 40, 0.1)).toThrow(/not finite/);
  });

  // Exponential values of mean 1, looks after 20, 40, 80, … replications. Counted is how often 1000 intervals cover;
  // binomial limits at 99.9 % for level 0.95 are 926 and 971. The lower is widened by what the rule was measured to
  // cost, see its description: nothing at 10 %, two points at 20 %.
  test.each([
    [0.1, 926, 300],
    [0.2, 926 - 20, 80],
  ])(
    'costs little coverage at %s with looks after 20, 40, 80 … replications',
    (asked, fewest, replications) => {
      const draw = draws('sequential');
      let covered = 0;
      let played = 0;
      for (let repetition = 0; repetition < 1000; repetition++) {
        const values: number[] = [];
        let interval = around(0, 1);
        for (let look = 20; ; look *= 2) {
          while (values.length < look) values.push(-Math.log(draw()));
          interval = meanInterval(values, 0.95);
          if (sequentialPrecision(interval, look, asked).reached) break;
        }
        played += values.length;
        if (interval.low <= 1 && 1 <= interval.high) covered++;
      }
      expect(covered).toBeGreaterThanOrEqual(fewest);
      expect(covered).toBeLessThanOrEqual(971);
      expect(played / 1000).toBeGreaterThan(replications);
    },
  );
});
