import { describe, expect, it } from 'vitest';
import { machineFacts } from '../facts/machine-groups.ts';
import { partFacts } from '../facts/part-facts.ts';
import { loggedJob, machineRun } from '../fixture/logged-job.ts';
import { arrivalFacts } from '../learn/arrival-facts.ts';
import type { LoggedJob, MachineRun } from '../logged-jobs.ts';
import { countedWords } from './counted-words.ts';

const WEEK = 7 * 86_400_000;
const MINUTE = 60_000;

function words(jobs: readonly LoggedJob[], runs: readonly MachineRun[] = [], weeks = 10) {
  const counted = { read: jobs.length, kept: jobs.length, troubles: [] };
  const parts = partFacts(jobs, runs, [0, 1, 2, 3, 4]);
  const log = { from: 0, until: weeks * WEEK, jobs, counted };
  const arrivals = arrivalFacts(log, null, () => 0.5);
  return countedWords(log, runs, parts, machineFacts(jobs, runs), arrivals);
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

  it('fits a law to measured times, with others that fit about as well, and a range to few of them', () => {
    const job = (minutes: number): LoggedJob =>
      loggedJob({
        quantity: null,
        stages: [{ name: 'sand', start: 0, end: minutes * MINUTE, isWork: true }],
      });
    const many = words([4, 9, 5, 7, 12, 6, 8, 5.5, 7.5, 10, 6.5].map(job)).stages.get('ring')?.get('sand');
    expect(many?.value).toMatch(/^(lognormal|gamma|weibull) .*mean 7\.\d+ min.* per job$/);
    expect(many?.source).toContain('11 jobs, by maximum likelihood; mean');
    expect(many?.others.length).toBeGreaterThan(0);
    const few = words([4, 9, 5].map(job)).stages.get('ring')?.get('sand');
    expect(few?.value).toBe('triangular 4 to 9 min, usually 5 per job');
    expect(few?.source).toContain('too few to fit a law');
  });

  it('takes what still goes on as longer than it has been', () => {
    const runs = [
      ...Array.from({ length: 12 }, (_, index) => machineRun({ start: 0, end: (index + 6) * 10 * MINUTE })),
      machineRun({ start: 10 * WEEK - 5 * 60 * MINUTE, end: null, outcome: 'running' }),
    ];
    const print = words([loggedJob({})], runs).prints.get('resin');
    expect(print?.source).toContain('12 runs and 1 not seen to their end');
    const broken = machineRun({ start: 0, end: 50 * MINUTE, outcome: 'broke down' });
    expect(words([loggedJob({})], [...runs, broken]).prints.get('resin')?.source).toContain(
      '12 runs and 2 not seen to their end',
    );
  });

  it('leaves out open work that may have rested over a night', () => {
    const job = (start: number, end: number | null): LoggedJob =>
      loggedJob({
        quantity: null,
        isOpen: end === null,
        finished: end,
        stages: [{ name: 'sand', start, end, isWork: true }],
      });
    const now = 10 * WEEK;
    const done = Array.from({ length: 12 }, (_, index) => job(0, (index + 6) * MINUTE));
    const source = (start: number): string | undefined =>
      words([...done, job(start, null)])
        .stages.get('ring')
        ?.get('sand')?.source;
    expect(source(now - 10 * MINUTE)).toContain('12 jobs and 1 not seen to their end');
    expect(source(now - 30 * 60 * MINUTE)).toMatch(/^12 jobs, by/);
  });

  it('gives breakdowns for the hours of running, also where there was none', () => {
    const hour = 60 * MINUTE;
    const runs = Array.from({ length: 30 }, () => machineRun({ start: 0, end: hour }));
    // None in 30: at most 3.688879454 (Garwood 1936), one every 8.13 h.
    expect(words([loggedJob({})], runs).breakdowns.get('resin')).toEqual({
      value: 'never seen',
      source: '0 in 30 h of running; 95 %: no more often than every 8.13 h',
    });
    const some = [...runs, machineRun({ start: 0, end: hour, outcome: 'broke down' })];
    expect(words([loggedJob({})], some).breakdowns.get('resin')?.value).toBe('every 31 h of running');
  });

  it('takes times of work only, by the piece where that explains them', () => {
    const job = (quantity: number, isWork: boolean): LoggedJob =>
      loggedJob({ quantity, stages: [{ name: 'sand', start: 0, end: 4 * quantity * MINUTE, isWork }] });
    const jobs = Array.from({ length: 12 }, (_, index) => job(index + 1, true));
    expect(words(jobs).stages.get('ring')?.get('sand')?.value).toBe('4 min per part');
    const clicks = Array.from({ length: 12 }, (_, index) => job(index + 1, false));
    expect(words(clicks).stages.get('ring')).toBeUndefined();
  });
});
