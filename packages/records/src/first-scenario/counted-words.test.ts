import { describe, expect, it } from 'vitest';
import { machineFacts } from '../facts/machine-groups.ts';
import { partFacts } from '../facts/part-facts.ts';
import { loggedJob, machineRun } from '../fixture/logged-job.ts';
import type { LoggedJob, MachineRun } from '../logged-jobs.ts';
import { countedWords } from './counted-words.ts';

const WEEK = 7 * 86_400_000;
const MINUTE = 60_000;

function words(jobs: readonly LoggedJob[], runs: readonly MachineRun[] = [], weeks = 10) {
  const counted = { read: jobs.length, kept: jobs.length, troubles: [] };
  const parts = partFacts(jobs, runs, [0, 1, 2, 3, 4]);
  return countedWords({ from: 0, until: weeks * WEEK, jobs, counted }, runs, parts, machineFacts(jobs, runs));
}

describe('countedWords', () => {
  it('gives rates with exact intervals', () => {
    // 17 in 30 days: 9.90312647 to 27.21864682 (Garwood 1936; R poisson.test), here of one week.
    const { jobs } = words(
      Array.from({ length: 17 }, () => loggedJob({})),
      [],
      1,
    );
    expect(jobs.get('ring')).toEqual({
      value: '17 per week',
      source: '17 jobs in 1 week; 95 %: 9.9 to 27.2',
    });
  });

  it('gives shares with exact intervals, also of none', () => {
    const runs = Array.from({ length: 20 }, (_, index) => machineRun({ start: index, end: index + 1 }));
    // None of 20: at most 16.8 % (Clopper and Pearson 1934: 1 - 0.025^(1/20)).
    expect(words([loggedJob({})], runs).fails.get('resin')).toEqual({
      value: '0 % of builds',
      source: '0 of 20 runs; 95 %: 0 to 16.8 %',
    });
  });

  it('takes times of work only, by the piece where that explains them', () => {
    const job = (quantity: number, isWork: boolean): LoggedJob =>
      loggedJob({ quantity, stages: [{ name: 'sand', start: 0, end: 4 * quantity * MINUTE, isWork }] });
    const jobs = Array.from({ length: 12 }, (_, index) => job(index + 1, true));
    expect(words(jobs).stages.get('ring')?.get('sand')?.value).toBe('4 min per part');
    const clicks = Array.from({ length: 12 }, (_, index) => job(index + 1, false));
    expect(words(clicks).stages.get('ring')?.size).toBe(0);
    expect(words(jobs.slice(0, 9)).stages.get('ring')?.size).toBe(0);
  });
});
