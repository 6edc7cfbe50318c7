import type { JobSelection, TargetMeaning } from '@buildweek/model';
import { binomialCumulative, studentCumulative } from '@buildweek/numbers';
import type { TargetResult } from '@buildweek/results';
import { oneSidedConfidence, skewedConfidence } from '@buildweek/statistics';
import { describe, expect, it } from 'vitest';
import { history, jobClass } from '../fixture/history.ts';
import { lab } from '../fixture/lab.ts';
import type { ObservedTarget } from './observation.ts';
import { TargetSums } from './target-sums.ts';

const ALL: JobSelection = { part: null, rush: null };
const LONG_RUN: TargetMeaning = { kind: 'long run' };

function within(share: number, meaning = LONG_RUN): ObservedTarget {
  return {
    kind: 'share within',
    wording: 'as written',
    jobs: ALL,
    share,
    within: { kind: 'clock', hours: 10 },
    meaning,
  };
}

/** Replications of ten jobs each, of which so many take an hour and the others twenty. */
function judged(target: ObservedTarget, within10: readonly number[], jobs = 10, level = 0.95): TargetResult {
  const sums = new TargetSums(lab({}), [target]);
  within10.forEach((count, replication) => {
    const leadTimes = Array.from({ length: jobs }, (_, job) => (job < count ? 1 : 20));
    sums.add(history(replication, { jobClasses: [jobClass('lever', false, leadTimes)] }));
  });
  const [result] = sums.results(13, level);
  if (result === undefined) throw new Error('There is no target.');
  return result;
}

/** Ten replications with eight jobs in time and ten with nine: a share of 0.85, and a standard error of 0.05 / √19. */
const MIXED = Array.from({ length: 20 }, (_, index) => 8 + (index % 2));

describe('a target on the long run', () => {
  it('is met, missed or not decided by the one-sided confidence of Student', () => {
    const error = 0.05 / Math.sqrt(19);
    for (const share of [0.8, 0.84, 0.85, 0.86, 0.9]) {
      const { confidence, verdict } = judged(within(share), MIXED);
      const met = studentCumulative((0.85 - share) / error, 19);
      expect(confidence?.met).toBeCloseTo(met, 9);
      expect(confidence?.missed).toBeCloseTo(1 - met, 9);
      expect(verdict).toBe(met >= 0.95 ? 'met' : met <= 0.05 ? 'missed' : 'not decided');
    }
    expect([0.8, 0.84, 0.85, 0.86, 0.9].map((share) => judged(within(share), MIXED).verdict)).toEqual([
      'met',
      'not decided',
      'not decided',
      'not decided',
      'missed',
    ]);
  });

  it('goes by the level of the study', () => {
    expect(judged(within(0.84), MIXED, 10, 0.8).verdict).toBe('met');
    expect(judged(within(0.84), MIXED, 10, 0.8).level).toBe(0.8);
  });

  it('tells the share with its interval, and what is asked for', () => {
    const result = judged(within(0.8), MIXED);
    expect(result).toMatchObject({
      wording: 'as written',
      kind: 'share within',
      currency: null,
      bound: 'at least',
      asked: 0.8,
      periods: null,
      found: { kind: 'estimate', value: 0.85, level: 0.95, replications: 20 },
    });
    if (result.found.kind !== 'estimate') throw new Error('There is no estimate.');
    // Student with 19 degrees of freedom: 2.093.
    expect(result.found.high - 0.85).toBeCloseTo((2.093 * 0.05) / Math.sqrt(19), 4);
  });

  it('takes the more careful of two confidences where a few periods are much worse than the others', () => {
    const few = Array.from({ length: 20 }, (_, index) => (index === 0 ? 4 : 9));
    const values = few.map((count) => count - 8.5);
    const { confidence } = judged(within(0.85), few);
    expect(confidence?.met).toBe(skewedConfidence(values));
    expect(confidence?.met).toBeLessThan(oneSidedConfidence(values));
    expect(confidence?.missed).toBeCloseTo(1 - oneSidedConfidence(values), 12);
  });

  it('is not taken for met only because nothing happened in a few replications', () => {
    const all = (replications: number) => Array.from({ length: replications }, () => 10);
    // With all jobs in time 20 times over, a share below 0.95 is excluded with 1 − 0.95^20 = 0.64 only.
    expect(judged(within(0.95), all(20))).toMatchObject({
      verdict: 'not decided',
      confidence: { met: expect.closeTo(1 - 0.95 ** 20, 12), missed: 0 },
    });
    expect(judged(within(0.95), all(60))).toMatchObject({
      verdict: 'met',
      confidence: { met: expect.closeTo(1 - 0.95 ** 60, 12) },
    });
    // That not one job is ever late cannot be found out by playing.
    expect(judged(within(1), all(60))).toMatchObject({
      verdict: 'not decided',
      confidence: { met: 0, missed: 0 },
    });
    expect(judged(within(1), MIXED)).toMatchObject({ verdict: 'missed' });
    const none = Array.from({ length: 20 }, () => 0);
    expect(judged(within(0.1), none)).toMatchObject({
      verdict: 'not decided',
      confidence: { met: 0, missed: expect.closeTo(1 - 0.9 ** 20, 12) },
    });
    expect(judged(within(0.9), none).verdict).toBe('missed');
  });

  it('that nothing speaks of is not decided', () => {
    expect(judged(within(0.9), MIXED, 0)).toMatchObject({
      verdict: 'not decided',
      confidence: null,
      found: { kind: 'refused', reason: 'No such job came.' },
    });
  });
});

describe('a target on the chance of a period', () => {
  const chance: TargetMeaning = { kind: 'chance of a period', chance: 0.6 };

  it('is judged by the exact share of periods that meet it', () => {
    const periods = Array.from({ length: 40 }, (_, index) => (index < 32 ? 9 : 5));
    const result = judged(within(0.9, chance), periods);
    expect(result.periods).toMatchObject({ asked: 0.6, found: { value: 0.8, replications: 40 } });
    // Clopper and Pearson for 32 of 40, from memory: 0.6435 to 0.9095.
    expect(result.periods?.found.low).toBeCloseTo(0.6435, 4);
    expect(result.periods?.found.high).toBeCloseTo(0.9095, 4);
    expect(result.confidence?.met).toBeCloseTo(binomialCumulative(31, 40, 0.6), 12);
    expect(result.confidence?.missed).toBeCloseTo(1 - binomialCumulative(32, 40, 0.6), 12);
    expect(result.verdict).toBe('met');
    expect(result.found).toMatchObject({ kind: 'estimate', value: (32 * 9 + 8 * 5) / 400 });
  });

  it('is missed where too few do', () => {
    const periods = Array.from({ length: 40 }, (_, index) => (index < 16 ? 9 : 5));
    expect(judged(within(0.9, chance), periods).verdict).toBe('missed');
  });
});
