import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { meanInterval } from './mean-interval.ts';
import { oneSidedConfidence, shareConfidence } from './one-sided.ts';
import { clopperPearsonInterval } from './proportion.ts';

describe('the confidence that a mean is at least 0', () => {
  // Source: Student (W. S. Gosset), "The probable error of a mean", Biometrika 6 (1908); R data set sleep: the
  // two-sided p of the paired differences is 0.002832890197.
  test("agrees with the published analysis of Student's sleep data", () => {
    const gain = [1.2, 2.4, 1.3, 1.3, 0, 1, 1.8, 0.8, 4.6, 1.4];
    expect(oneSidedConfidence(gain)).toBeCloseTo(1 - 0.00283289019738427 / 2, 12);
    expect(oneSidedConfidence(gain.map((value) => -value))).toBeCloseTo(0.00283289019738427 / 2, 12);
  });

  test('is the level at which a bound of the interval touches 0', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -5, max: 5, noNaN: true }), { minLength: 3, maxLength: 30 }),
        (values) => {
          const confidence = oneSidedConfidence(values);
          fc.pre(confidence > 0.51 && confidence < 0.9999);
          // The lower end of a two-sided interval of level 2 c − 1 is the one-sided bound of level c.
          expect(meanInterval(values, 2 * confidence - 1).low).toBeCloseTo(0, 8);
        },
      ),
      { seed: 1, numRuns: 300 },
    );
  });

  test('is certain for values that never vary', () => {
    expect([oneSidedConfidence([2, 2]), oneSidedConfidence([0, 0]), oneSidedConfidence([-1, -1])]).toEqual([
      1, 1, 0,
    ]);
    expect(() => oneSidedConfidence([1])).toThrow('At least 2');
  });
});

describe('the confidence that a probability is at least or at most a given one', () => {
  // Source: C. J. Clopper and E. S. Pearson, Biometrika 26 (1934), 404–413 (recomputed): the two-sided 95 % limits of
  // 43 of 50 and of 190 of 200 are one-sided limits of 97.5 %.
  test.each([
    [43, 50, 0.732603997502992, 0.941808299659628],
    [190, 200, 0.909972462298649, 0.975765834527891],
  ])('is 97.5 %% at the published limits of %i of %i', (successes, trials, low, high) => {
    expect(shareConfidence(successes, trials, low).atLeast).toBeCloseTo(0.975, 10);
    expect(shareConfidence(successes, trials, high).atMost).toBeCloseTo(0.975, 10);
  });

  test('is the level at which the exact interval touches the share, and careful', () => {
    fc.assert(
      fc.property(
        fc
          .integer({ min: 2, max: 60 })
          .chain((n) => fc.tuple(fc.integer({ min: 1, max: n - 1 }), fc.constant(n))),
        fc.double({ min: 0.05, max: 0.95, noNaN: true }),
        ([successes, trials], share) => {
          const { atLeast, atMost } = shareConfidence(successes, trials, share);
          expect(atLeast + atMost).toBeLessThanOrEqual(1);
          fc.pre(atLeast > 0.51 && atLeast < 0.9999);
          expect(clopperPearsonInterval(successes, trials, 2 * atLeast - 1).low).toBeCloseTo(share, 7);
        },
      ),
      { seed: 1, numRuns: 300 },
    );
  });

  test('says nothing for no successes, and what 20 of 20 say', () => {
    expect(shareConfidence(0, 20, 0.9).atLeast).toBe(0);
    // 20 successes come with a chance of 0.9^20 if the share is 0.9.
    expect(shareConfidence(20, 20, 0.9).atLeast).toBeCloseTo(1 - 0.9 ** 20, 12);
    expect(shareConfidence(20, 20, 0.9).atMost).toBe(0);
    expect(() => shareConfidence(3, 2, 0.5)).toThrow('cannot be');
    expect(() => shareConfidence(1, 2, 1)).toThrow('share');
  });
});
