import { describe, expect, it } from 'vitest';
import { at, loggedJob, machineRun } from './fixture/logged-job.ts';
import { logUntil, runsUntil } from './log-until.ts';

const UNTIL = at('2026-03-10T00:00');

describe('A log as it stood earlier', () => {
  it('has the jobs that had been asked for, open where they were not finished', () => {
    const stages = [
      { name: 'sand', start: at('2026-03-09T10:00'), end: at('2026-03-10T11:00'), isWork: true },
    ];
    const jobs = [
      loggedJob({ name: '1', asked: at('2026-03-05T08:00'), finished: at('2026-03-06T08:00') }),
      loggedJob({ name: '2', asked: at('2026-03-08T08:00'), finished: at('2026-03-11T08:00'), stages }),
      loggedJob({ name: '3', asked: at('2026-03-10T08:00') }),
    ];
    const counted = { read: 3, kept: 3, troubles: [] };
    const log = logUntil(
      { from: at('2026-03-05T00:00'), until: at('2026-04-01T00:00'), jobs, counted },
      UNTIL,
    );
    expect(log.until).toBe(UNTIL);
    expect(log.jobs.map(({ name, isOpen, finished }) => [name, isOpen, finished])).toEqual([
      ['1', false, at('2026-03-06T08:00')],
      ['2', true, null],
    ]);
    expect(log.jobs[1]?.stages[0]).toMatchObject({ start: at('2026-03-09T10:00'), end: null });
  });

  it('has the runs that had begun, running where they had not ended', () => {
    const runs = [
      machineRun({ start: at('2026-03-09T08:00'), end: at('2026-03-09T12:00') }),
      machineRun({ start: at('2026-03-09T18:00'), end: at('2026-03-10T02:00') }),
      machineRun({ start: at('2026-03-10T18:00'), end: at('2026-03-11T02:00') }),
    ];
    expect(runsUntil(runs, UNTIL).map(({ outcome, end }) => [outcome, end])).toEqual([
      ['done', at('2026-03-09T12:00')],
      ['running', null],
    ]);
  });
});
