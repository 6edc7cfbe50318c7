import { studentQuantile } from '@buildweek/numbers';
import { describe, expect, it } from 'vitest';
import { measureDifference, measureEstimate, mostOf } from './measure-estimates.ts';

/** Observations of two measures; the first is another's. */
function observations(rows: readonly (readonly [numerator: number, denominator: number])[]): Float64Array[] {
  return rows.map(([numerator, denominator]) => Float64Array.of(-5, 0, numerator, denominator));
}

/** Twenty replications of two kinds in turns: 8 of 10 jobs and 27 of 30. */
const TURNS = Array.from({ length: 20 }, (_, index) =>
  index % 2 === 0 ? ([8, 10] as const) : ([27, 30] as const),
);

describe('the estimate of a measure', () => {
  it('is the ratio of the totals, not the mean of the ratios', () => {
    const found = measureEstimate(observations(TURNS), 1, 0.95);
    // 35 of 40 jobs; the mean of the two shares would be 0.85.
    expect(found).toMatchObject({ kind: 'estimate', value: 0.875, level: 0.95, replications: 20 });
    if (found.kind !== 'estimate') return;
    // Residuals 8 − 8.75 and 27 − 26.25 are ∓ 0.75; their standard deviation is 0.75 √(20 / 19), over 20 jobs.
    const half = (studentQuantile(0.975, 19) * 0.75 * Math.sqrt(20 / 19)) / Math.sqrt(20) / 20;
    expect(found.high - found.value).toBeCloseTo(half, 12);
    expect(found.value - found.low).toBeCloseTo(half, 12);
  });

  it('is refused with fewer than twenty replications, and without any such job', () => {
    expect(measureEstimate(observations(TURNS.slice(0, 19)), 1, 0.95).kind).toBe('refused');
    expect(measureEstimate(observations(TURNS.map(() => [0, 0])), 1, 0.95)).toEqual({
      kind: 'refused',
      reason: 'There is nothing of it here.',
    });
  });

  it('is never where one replication did not reach it', () => {
    const rows = TURNS.map((row, index) => (index < 3 ? ([Number.POSITIVE_INFINITY, 1] as const) : row));
    expect(measureEstimate(observations(rows), 1, 0.95)).toEqual({
      kind: 'never',
      reason: 'In 3 of 20 replications it lies beyond the end of what was played.',
    });
  });

  it('lies where the measure can lie: a share not above 1, and nothing below 0', () => {
    const good = TURNS.map((_, index) => [index === 0 ? 9 : 10, 10] as const);
    expect(measureEstimate(observations(good), 1, 0.999, mostOf('share'))).toMatchObject({ high: 1 });
    expect(mostOf('hours')).toBe(Number.POSITIVE_INFINITY);
    const few = TURNS.map((_, index) => [index === 0 ? 1 : 0, 10] as const);
    expect(measureEstimate(observations(few), 1, 0.999)).toMatchObject({ low: 0 });
  });
});

describe('the difference of a measure', () => {
  it('is that of the two long-run values, second less first, with the luck that both have taken out', () => {
    const luck = (index: number): number => ((index * 7) % 5) - 2;
    const before = observations(TURNS.map((_, index) => [80 + luck(index), 100]));
    const after = observations(TURNS.map((_, index) => [85 + luck(index), 100]));
    const { difference, paired } = measureDifference(before, after, 1, 0.95);
    expect(difference).toMatchObject({ kind: 'estimate', value: expect.closeTo(0.05, 12) });
    if (difference.kind !== 'estimate') return;
    expect(difference.high - difference.low).toBeLessThan(1e-9);
    expect(paired?.correlation).toBeCloseTo(1, 9);
  });

  it('compares ratios of totals although the jobs differ from replication to replication', () => {
    const other = TURNS.map(([, jobs]) => [jobs / 2, jobs] as const);
    const { difference } = measureDifference(observations(TURNS), observations(other), 1, 0.95);
    expect(difference).toMatchObject({ value: expect.closeTo(0.5 - 0.875, 12) });
    // Half of the jobs in every replication has no luck in it, so that all of it is that of the first.
    const own = measureEstimate(observations(TURNS), 1, 0.95);
    if (difference.kind !== 'estimate' || own.kind !== 'estimate') throw new Error('There is no estimate.');
    expect(difference.high - difference.low).toBeCloseTo(own.high - own.low, 12);
  });

  it('is refused where one of the two has no such jobs, and never where one of the two never gets there', () => {
    const none = observations(TURNS.map(() => [0, 0]));
    expect(measureDifference(observations(TURNS), none, 1, 0.95).difference).toEqual({
      kind: 'refused',
      reason: 'One of the two has nothing of it.',
    });
    const beyond = observations(TURNS.map(() => [Number.POSITIVE_INFINITY, 1]));
    for (const pair of [
      [beyond, observations(TURNS)],
      [observations(TURNS), beyond],
    ] as const) {
      expect(measureDifference(pair[0], pair[1], 1, 0.95).difference.kind).toBe('never');
    }
  });

  it('takes the replications that both have', () => {
    const longer = observations([...TURNS, [0, 1000]]);
    const { difference } = measureDifference(observations(TURNS), longer, 1, 0.95);
    expect(difference).toMatchObject({ value: 0, replications: 20 });
  });
});
