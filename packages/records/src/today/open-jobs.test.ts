import type { Lab } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import { at, loggedJob, machineRun } from '../fixture/logged-job.ts';
import { openJobs } from './open-jobs.ts';

const NOW = at('2027-03-03T09:30');
const HOUR = 3_600_000;

/** As much of a lab as tells where jobs may stand. */
const LAB = {
  demand: [
    { name: 'ring', part: 'ring' },
    { name: 'urgent lids', part: 'lid' },
  ],
  parts: [
    {
      name: 'ring',
      space: 0.25,
      stages: [
        { kind: 'work', name: 'prepare file' },
        { kind: 'build', name: 'build', machineGroup: 'resin' },
        { kind: 'work', name: 'remove supports' },
      ],
    },
    { name: 'lid', space: 1, stages: [{ kind: 'work', name: 'sand' }] },
  ],
  labCalendar: 'day',
  calendars: [
    {
      name: 'day',
      weekly: [0, 1, 2, 3, 4].map((day) => ({ fromHour: day * 24 + 8, toHour: day * 24 + 16 })),
    },
  ],
  machines: [{ name: 'resin', count: 2, capacity: 1 }],
} as unknown as Lab;

const open = (job: Parameters<typeof loggedJob>[0]) => loggedJob({ isOpen: true, asked: NOW - HOUR, ...job });

describe('openJobs', () => {
  it('puts every open job at the stage that the log names, or its last begun, or the first', () => {
    const jobs = [
      open({ stage: 'Remove_supports' }),
      open({ stage: 'Printing' }),
      open({ stages: [{ name: 'remove supports', start: NOW - 1, end: null, isWork: true }] }),
      open({}),
      open({ part: 'lid', quantity: 3, rush: true, promised: at('2027-03-05T23:59:59') }),
    ];
    const { jobs: found, told } = openJobs(jobs, [], LAB, NOW);
    expect(found.map(({ demand, stage }) => [demand, stage])).toEqual([
      ['ring', 'remove supports'],
      ['ring', 'build'],
      ['ring', 'remove supports'],
      ['ring', 'prepare file'],
      ['urgent lids', 'sand'],
    ]);
    expect(found.at(-1)).toMatchObject({ pieces: 3, rush: true, due: at('2027-03-05T16:00') });
    expect(told).toContain(
      'For 2 jobs the log does not say where they stand: they wait before their first stage.',
    );
  });

  it('leaves out what is finished, cancelled, or asked for later', () => {
    const jobs = [loggedJob({}), open({ cancelled: true }), open({ asked: NOW + 1 })];
    expect(openJobs(jobs, [], LAB, NOW).jobs).toEqual([]);
  });

  it('says which parts and stages the scenario has not got', () => {
    const { jobs, told } = openJobs([open({ part: 'cup' }), open({ stage: 'polish' })], [], LAB, NOW);
    expect(jobs).toHaveLength(1);
    expect(told.join(' ')).toMatch(/“polish” of 1 job is none of the scenario.*“cup” is no demand/);
  });

  it('keeps jobs in the machine that runs them, with as much left as such runs take', () => {
    const done = Array.from({ length: 5 }, (_, index) => machineRun({ start: 0, end: (index + 2) * HOUR }));
    const running = machineRun({ start: NOW - HOUR, end: null, outcome: 'running' });
    const jobs = [
      open({ stage: 'print', machine: 'resin 1', quantity: 2 }),
      open({ stage: 'print', machine: 'resin 1', quantity: 3 }),
      open({ stage: 'print', machine: 'resin 2', quantity: 1 }),
    ];
    const state = openJobs(jobs, [...done, running], LAB, NOW);
    // Runs took 2 to 6 h, in the middle 4; an hour is over. Two of four places are taken, so that three do not fit.
    expect(state.machines).toEqual([{ machine: 'resin 1', busyUntil: NOW + 3 * HOUR }]);
    expect(state.jobs.map(({ machine }) => machine)).toEqual(['resin 1', null, null]);
    expect(state.told.join(' ')).toContain('1 job has more pieces than fit in what runs');
  });
});
