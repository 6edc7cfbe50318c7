import type { AwayGroup, Band } from '@buildweek/results';
import { describe, expect, it } from 'vitest';
import { estimate } from '../fixture/plans.ts';
import { awaySentences } from './away-sentences.ts';

const NO_BAND: Band = { value: [], low: [], high: [], level: 0.95, replications: 40 };

/** A group whose share on time changes from 90 % while one is away. */
function group(by: number, half: number, more: Partial<AwayGroup> = {}): AwayGroup {
  const during = { there: estimate(0.9), away: estimate(0.9 + by), difference: estimate(by, half) };
  return {
    group: 'technicians',
    count: 2,
    onTime: { before: during, during, after: during },
    recovery: { weeks: 1, low: 1, high: 1 },
    mostExtraJobs: estimate(4),
    jobsInLab: NO_BAND,
    onTimeByWeek: null,
    ...more,
  };
}

describe('An absence in a sentence', () => {
  it.each([
    [1, 'One week without one of “technicians” cuts the share on time'],
    [2, 'Two weeks without one of “technicians” cut the share on time'],
  ])('of %d weeks that tells agrees with their number', (weeks, start) => {
    expect(awaySentences([group(-0.2, 0.05)], weeks, 8)).toEqual([
      `${start}, of the jobs that come meanwhile, from 90 % to 70 %; recovery takes one week.`,
    ]);
  });

  it.each([
    [1, 'does'],
    [3, 'do'],
  ])('of %d weeks that tells nothing agrees with it too', (weeks, word) => {
    expect(awaySentences([group(-0.01, 0.05)], weeks, 8)[0]).toContain(
      `without one of “technicians” ${word} not change the share on time by more than can be told from chance`,
    );
  });

  it.each([
    [1, 'leaves'],
    [2, 'leave'],
  ])('of %d weeks where nothing is promised says how many jobs pile up', (weeks, word) => {
    const [sentence] = awaySentences([group(0, 0, { onTime: null, count: 1 })], weeks, 8);
    expect(sentence).toContain(
      `without the only one of “technicians” ${word} up to 4.0 more jobs in the lab;`,
    );
  });

  it('puts what costs most first, and says where recovery is not seen', () => {
    const slow = group(-0.5, 0.05, { group: 'inspectors', recovery: { weeks: null, low: null, high: null } });
    const [first, second] = awaySentences([group(-0.2, 0.05), slow], 2, 8);
    expect(first).toMatch(/“inspectors” cut .*; the lab has not recovered after eight weeks\.$/);
    expect(second).toContain('“technicians”');
  });
});
