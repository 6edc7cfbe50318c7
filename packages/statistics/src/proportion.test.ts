import { binomialCumulative } from '@buildweek/numbers';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { clopperPearsonInterval, wilsonInterval } from './proportion.ts';

const trials = fc
  .integer({ min: 1, max: 500 })
  .chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)));

describe('the interval of a probability from independent trials', () => {
  // Sources: Wilson 1927; Clopper and Pearson 1934; recomputed with R.
  test.each([
    [43, 50, [0.738138062894145, 0.930491665729837], [0.732603997502992, 0.941808299659628]],
    [0, 20, [0, 0.161125158052819], [0, 0.168433470983085]],
    [190, 200, [0.910421851861224, 0.972617354399236], [0.909972462298649, 0.975765834527891]],
  ])('agrees with the published values for %s of %s', (successes, n, wilson, exact) => {
    const score = wilsonInterval(successes, n, 0.95);
    const clopper = clopperPearsonInterval(successes, n, 0.95);
    expect(score.low).toBeCloseTo(wilson[0] ?? Number.NaN, 13);
    expect(score.high).toBeCloseTo(wilson[1] ?? Number.NaN, 13);
    expect(clopper.low).toBeCloseTo(exact[0] ?? Number.NaN, 12);
    expect(clopper.high).toBeCloseTo(exact[1] ?? Number.NaN, 12);
    expect(clopper.value).toBe(successes / n);
  });

  test('contains the observed share, lies within 0 and 1, and mirrors when success and failure change places', () => {
    fc.assert(
      fc.property(trials, fc.double({ min: 0.5, max: 0.999, noNaN: true }), ([successes, n], level) => {
        for (const interval of [wilsonInterval, clopperPearsonInterval]) {
          const { value, low, high } = interval(successes, n, level);
          expect(low).toBeGreaterThanOrEqual(0);
          expect(low).toBeLessThanOrEqual(value);
          expect(high).toBeGreaterThanOrEqual(value);
          expect(high).toBeLessThanOrEqual(1);
          const mirrored = interval(n - successes, n, level);
          expect(mirrored.low).toBeCloseTo(1 - high, 10);
          expect(mirrored.high).toBeCloseTo(1 - low, 10);
        }
      }),
      { seed: 1, numRuns: 500 },
    );
  });

  test('covers with at least the level by Clopper and Pearson, whatever the probability', () => {
    for (const p of [0.01, 0.1, 0.35, 0.5, 0.9]) {
      let covered = 0;
      for (let successes = 0; successes <= 40; successes++) {
        const { low, high } = clopperPearsonInterval(successes, 40, 0.95);
        if (p >= low && p <= high) {
          covered += binomialCumulative(successes, 40, p) - binomialCumulative(successes - 1, 40, p);
        }
      }
      expect(covered).toBeGreaterThanOrEqual(0.95);
    }
  });

  test('is refused for trials that cannot be', () => {
    for (const [successes, n] of [
      [3, 2],
      [-1, 2],
      [0, 0],
      [0.5, 2],
    ] as const) {
      expect(() => wilsonInterval(successes, n, 0.95)).toThrow(RangeError);
      expect(() => clopperPearsonInterval(successes, n, 0.95)).toThrow(RangeError);
    }
  });
});
