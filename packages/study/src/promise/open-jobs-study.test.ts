import type { Lab, Stage } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import { attended, bench, build, machine, part, people } from '../fixture/lab.ts';
import { promisePlay, sandingLab } from '../fixture/requested-lab.ts';
import { openJobsStudy } from './open-jobs-study.ts';
import { openJobsVerdict } from './open-jobs-words.ts';
import { pinnedVerdict } from './pinned-words.ts';

const HANDS = { setUp: attended('hands', 0.5), unload: attended('hands', 0.5) };

/** Two printers that hold two pieces for ten hours; one technician from 08:00 to 16:00 sets them up in half an hour. */
function printing(jobs: Parameters<typeof sandingLab>[0], more: Partial<Lab> = {}): Lab {
  const route: readonly Stage[] = [build('build', 'printers'), bench('clean', attended('hands', 0.5))];
  const print = {
    kind: 'typed' as const,
    perBuild: { distribution: { kind: 'constant' as const, value: 10 }, typicalHours: 10 },
    perPart: { distribution: { kind: 'constant' as const, value: 0 }, typicalHours: 0 },
  };
  return sandingLab(
    jobs.map((job) => ({ stage: 'build', ...job })),
    {
      machines: [machine('printers', { count: 2, capacity: 2, ...HANDS })],
      parts: ['lever', 'new request'].map((name) => part(name, route, { print })),
      ...more,
    },
  );
}

describe('The jobs in the lab', () => {
  it('have dates and chances, and the builds of today their machines, hours and people', async () => {
    // By hand: jobs 1 and 2 share a build, set up 08:00 to 08:30, printed by 18:30; job 3 from 08:30, by 19:00.
    const lab = printing([{ dueAtHour: 24 + 9 }, { dueAtHour: 24 + 10 }, { quantity: 2, dueAtHour: 16 }]);
    // Rank: job 3 is due first.
    const found = await openJobsStudy(lab, promisePlay());
    expect(found?.day?.closes.at).toBe('2025-01-06 16:00');
    expect(found?.day?.opens.at).toBe('2025-01-07 08:00');
    expect(found?.day?.starts).toEqual([
      {
        machine: 'printers 1',
        jobs: [{ job: 'job 3', part: 'lever', pieces: 2 }],
        start: { at: '2025-01-06 08:00', hours: 8 },
        startBy: { at: '2025-01-06 08:00', hours: 8 },
        by: ['technicians 1'],
        share: 1,
        shareOnMachine: 1,
      },
      {
        machine: 'printers 2',
        jobs: [
          { job: 'job 1', part: 'lever', pieces: 1 },
          { job: 'job 2', part: 'lever', pieces: 1 },
        ],
        start: { at: '2025-01-06 08:30', hours: 8.5 },
        startBy: { at: '2025-01-06 08:30', hours: 8.5 },
        by: ['technicians 1'],
        share: 1,
        shareOnMachine: 1,
      },
    ]);
    // Printed from 08:30 and from 09:00 for ten hours: they stand 13.5 and 13 of the 16 closed hours.
    expect(found?.day?.overnight).toEqual([
      {
        machine: 'printers 1',
        state: 'stands done',
        jobs: ['job 3'],
        since: { at: '2025-01-06 18:30', hours: 18.5 },
        standsHours: 13.5,
        share: 1,
      },
      {
        machine: 'printers 2',
        state: 'stands done',
        jobs: ['job 1', 'job 2'],
        since: { at: '2025-01-06 19:00', hours: 19 },
        standsHours: 13,
        share: 1,
      },
    ]);
    // Tuesday: both are taken out by 09:00, then cleaned in the order of their promises.
    expect(found?.openJobs.map(({ job, meanReady, onTime }) => [job, meanReady?.at, onTime])).toMatchObject([
      ['job 1', '2025-01-07 10:00', { value: 0 }],
      ['job 2', '2025-01-07 10:30', { value: 0 }],
      ['job 3', '2025-01-07 09:30', { value: 0 }],
    ]);
    expect(openJobsVerdict(found?.openJobs ?? [], found?.day ?? null)).toEqual([
      '3 of 3 jobs with a promise keep it in fewer than nine of ten plays: job 1 (1 × lever, 0 %), job 2 (1 × lever, 0 %), job 3 (2 × lever, 0 %).',
      'Until the lab opens again (it closes on Monday 6 January at 16:00): 2 builds to start, first printers 1 with job 3, started by Mon 6 Jan 08:00, by technicians 1; so in 100 % of the plays.',
      'When it opens on Tuesday 7 January at 08:00, 2 of 2 machines stand with a finished build (printers 1 from Mon 6 Jan 18:30, printers 2 from Mon 6 Jan 19:00), in most plays.',
    ]);
  });

  it('say why they may be late: the work that is left, and where they wait', async () => {
    const found = await openJobsStudy(printing([{ dueAtHour: 16 }]), promisePlay());
    // Set-up, print, unloading, cleaning: 11.5 h. It waits for the shift on both mornings: 8 h, and 13.5 h.
    expect(found?.openJobs[0]?.risk).toEqual([
      'It is due in 16.0 h by the clock, and 11.5 h of work on it are left; where it is late, it waits 13.5 h for somebody to come before unload of build and 8.0 h for somebody to come before set-up of build.',
    ]);
  });

  it('are played from the moment at which they stand there, in the middle of a week', async () => {
    // Wednesday 10:00: an hour of set-up and print begins at once, and there is no promise of the days before.
    const lab = printing([{ dueAtHour: 3 * 24 + 9, arrivedAtHour: 50, name: 'R-7' }]);
    const state = { ...lab.initialState, atHour: 2 * 24 + 10 };
    const found = await openJobsStudy({ ...lab, initialState: state }, promisePlay());
    expect(found?.day?.closes).toEqual({ at: '2025-01-08 16:00', hours: 6 });
    expect(found?.day?.starts).toMatchObject([
      { machine: 'printers 1', jobs: [{ job: 'R-7' }], start: { at: '2025-01-08 10:00', hours: 0 } },
    ]);
    // Printed from 10:30 to 20:30, taken out on Thursday by 08:30, cleaned by 09:00.
    expect(found?.openJobs[0]).toMatchObject({
      job: 'R-7',
      arrived: '2025-01-08 02:00',
      meanReady: { at: '2025-01-09 09:00', hours: 23 },
      onTime: { value: 1 },
    });
  });

  it('are called by their names, and by their numbers too where two have the same', async () => {
    const found = await openJobsStudy(
      printing([{ name: 'R-7' }, {}, { name: 'R-8' }, { name: 'R-8' }]),
      promisePlay(),
    );
    expect(found?.openJobs.map(({ job }) => job)).toEqual(['R-7', 'job 2', 'R-8 (job 3)', 'R-8 (job 4)']);
  });

  it('that keep their promise in nine of ten plays are at no risk', async () => {
    const found = await openJobsStudy(printing([{ dueAtHour: 40 }]), promisePlay());
    expect(found?.openJobs[0]).toMatchObject({ onTime: { value: 1 }, risk: [], moved: [] });
    expect(openJobsVerdict(found?.openJobs ?? [], null)).toEqual([
      'The one job with a promise keeps it in at least nine of ten plays.',
    ]);
  });

  it('in a machine are not started again, and the machine is known to be held', async () => {
    const lab = printing([{ dueAtHour: 40 }]);
    const held = {
      ...lab,
      initialState: {
        ...lab.initialState,
        machines: [{ machine: 'printers 2', busyUntilHour: 20, material: null, jobs: [0] }],
      },
    };
    const found = await openJobsStudy(held, promisePlay());
    expect(found?.openJobs[0]).toMatchObject({ machine: 'printers 2' });
    expect(found?.day?.starts).toEqual([]);
    expect(found?.day?.overnight).toMatchObject([
      { machine: 'printers 1', state: 'is empty', standsHours: 16 },
      { machine: 'printers 2', state: 'stands done', since: { at: '2025-01-06 20:00' }, standsHours: 12 },
    ]);
  });

  it('tell what in most plays becomes of builds whose length is drawn', async () => {
    const lab = printing([{}], { people: [people('technicians', 1, ['hands'])] });
    const print = {
      kind: 'typed' as const,
      perBuild: { distribution: { kind: 'uniform' as const, low: 1, high: 30 }, typicalHours: 10 },
      perPart: { distribution: { kind: 'constant' as const, value: 0 }, typicalHours: 0 },
    };
    const drawn = { ...lab, parts: lab.parts.map((one) => ({ ...one, print })) };
    const found = await openJobsStudy(drawn, promisePlay({ replications: 200 }));
    const night = found?.day?.overnight[0];
    // Printed from 08:30: taken out before 16:00 when it takes at most 7 h, done by 08:00 when at most 23.5 h.
    expect(night?.state).toBe('stands done');
    expect(night?.share).toBeGreaterThan(0.45);
    expect(night?.share).toBeLessThan(0.68);
  });

  it('with a build decided on are set against the rules deciding alone', async () => {
    const lab = printing([{ dueAtHour: 24 + 11 }, { dueAtHour: 24 + 11 }]);
    const pinned = [{ machine: 'printers 2', jobs: [1], fromHour: 15 }];
    const found = await openJobsStudy(
      { ...lab, initialState: { ...lab.initialState, pinned } },
      promisePlay(),
    );
    // By hand: together they print 08:30 to 18:30, are taken out by 08:30 and cleaned by 09:00 and 09:30. Apart, job 2 is
    // set up at 15:00, prints until 01:30, and is taken out and cleaned behind job 1: 08:30, 09:00, then 09:30 and 10:00.
    expect(found?.pinned?.builds).toEqual([
      { machine: 'printers 2', jobs: ['job 2'], from: { at: '2025-01-06 15:00', hours: 15 }, share: 1 },
    ]);
    expect(
      found?.pinned?.effects.map(({ job, hoursLater }) => [
        job,
        'value' in hoursLater ? hoursLater.value : null,
      ]),
    ).toEqual([
      ['job 1', 0.5],
      ['job 2', 0.5],
    ]);
    expect(
      found?.day?.starts.map(({ machine: name, jobs, start }) => [
        name,
        jobs.map(({ job }) => job),
        start.at,
      ]),
    ).toEqual([
      ['printers 1', ['job 1'], '2025-01-06 08:00'],
      ['printers 2', ['job 2'], '2025-01-06 15:00'],
    ]);
    expect(pinnedVerdict(found?.pinned as NonNullable<NonNullable<typeof found>['pinned']>)).toEqual([
      'Decided: printers 2 with job 2 from Mon 6 Jan 15:00 on (started so, whole, in 100 % of the plays before the lab opens again).',
      'Against the rules deciding alone: no more and no fewer jobs are late, as far as can be told; job 1 (1 × lever) ends 0.5 h later.',
    ]);
  });
});
