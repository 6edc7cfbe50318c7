import type { InitialJob, Lab, PinnedBuild } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import {
  at,
  attended,
  buildStage,
  dated,
  lab,
  lines,
  machine,
  part,
  people,
  play,
  printed,
  waitStage,
} from '../fixture/lab.ts';
import { begun, contents } from '../fixture/timeline.ts';
import { hashHistory } from '../observe/hash.ts';
import { checkLaws } from '../observe/laws.ts';

/** Two printers that hold two pieces for three hours; a technician from 08:00 to 16:00 takes builds out in half an hour. */
function pinned(
  jobs: readonly Partial<InitialJob>[],
  builds: readonly PinnedBuild[] | undefined,
  more: Partial<Lab> = {},
): Lab {
  return lab({
    people: [people('technicians', 1, ['all'])],
    machines: [
      machine('printers', {
        count: 2,
        capacity: 2,
        setUp: attended('all', 0.25),
        unload: attended('all', 0.5),
      }),
    ],
    parts: [part('lever', [waitStage('check', 1), buildStage('build', 'printers')], { print: printed(3) })],
    demand: [dated('lever', [])],
    initialState: {
      jobs: jobs.map((job) => ({
        stream: 'lever',
        quantity: 1,
        rush: false,
        arrivedAtHour: -1,
        dueAtHour: null,
        stage: 'build',
        remainingHours: null,
        ...job,
      })),
      machines: [],
      ...(builds === undefined ? {} : { pinned: builds }),
    },
    ...more,
  });
}

function startsOf(testLab: Lab): string[] {
  return lines(play(testLab), ({ what, phase }) => what === 'step starts' && phase === 'set-up');
}

describe('A build that has been decided on', () => {
  const PIN = { machine: 'printers 1', jobs: [2], fromHour: at('mon', '10:00') };

  it('starts at its hour on its machine, which is kept for it; its jobs go into no other build', () => {
    // Without it: jobs 0 and 1 on printers 1 at 08:00, job 2 on printers 2 at 08:15.
    expect(startsOf(pinned([{}, {}, {}], undefined))).toEqual([
      'mon 08:00 step starts job 1 build set-up on printers 1 by technicians 1',
      'mon 08:00 step starts job 0 build set-up on printers 1 by technicians 1',
      'mon 08:15 step starts job 2 build set-up on printers 2 by technicians 1',
    ]);
    expect(startsOf(pinned([{}, {}, {}], [PIN]))).toEqual([
      'mon 08:00 step starts job 1 build set-up on printers 2 by technicians 1',
      'mon 08:00 step starts job 0 build set-up on printers 2 by technicians 1',
      'mon 10:00 step starts job 2 build set-up on printers 1 by technicians 1',
    ]);
  });

  it('keeps its jobs together, whoever is ranked before them, and takes no others along', () => {
    const jobs = [{ rush: true }, {}, {}, {}];
    const builds = [{ machine: 'printers 2', jobs: [3], fromHour: 0 }];
    expect(contents(play(pinned(jobs, builds)), 'build', 'set-up').slice(0, 3)).toEqual([
      'mon 08:00 on printers 1: 1 of job 0, 1 of job 1',
      'mon 08:15 on printers 2: 1 of job 3',
      'mon 11:45 on printers 1: 1 of job 2',
    ]);
  });

  it('starts with those of its jobs that are ready; the others are built like any other', () => {
    // Job 1 is checked until 10:30.
    const jobs = [{}, { stage: 'check', remainingHours: 10.5 }];
    const builds = [{ machine: 'printers 2', jobs: [0, 1], fromHour: at('mon', '09:00') }];
    expect(startsOf(pinned(jobs, builds))).toEqual([
      'mon 09:00 step starts job 0 build set-up on printers 2 by technicians 1',
      'mon 10:30 step starts job 1 build set-up on printers 1 by technicians 1',
    ]);
  });

  it('waits for the first of its jobs, and is given up when none comes within a day', () => {
    const slow = { stage: 'check', remainingHours: 20 + at('mon', '09:00') };
    const builds = [{ machine: 'printers 2', jobs: [0], fromHour: at('mon', '09:00') }];
    expect(startsOf(pinned([slow], builds))).toEqual([
      'tue 08:00 step starts job 0 build set-up on printers 2 by technicians 1',
    ]);
    // A day later it is built where the rules say, and the machine takes others before.
    const later = { stage: 'check', remainingHours: 26 + at('mon', '09:00') };
    const testLab = pinned([later], builds, {
      demand: [dated('lever', [at('tue', '09:30'), at('tue', '09:30')], { quantity: 2 })],
    });
    expect(startsOf(testLab)).toContain(
      'tue 10:45 step starts job 2 build set-up on printers 2 by technicians 1',
    );
  });

  it('leaves the laws as they are, and another lab that decides nothing changes nothing', () => {
    const testLab = pinned([{}, {}, {}, {}, {}], [PIN], { demand: [dated('lever', [1, 9, 10, 30, 31, 32])] });
    expect(checkLaws(play(testLab)).every(({ holds }) => holds)).toBe(true);
    const nothing = pinned([{}, {}], []);
    expect(hashHistory(play(nothing))).toBe(hashHistory(play(pinned([{}, {}], undefined))));
  });

  it('is refused when its jobs cannot share a build, or are not built on its machine', () => {
    const parts = ['grey', 'black'].map((material) =>
      part(material, [buildStage('build', 'printers')], { material, print: printed(3) }),
    );
    const demand = parts.map(({ name }) => dated(name, []));
    const two = pinned([{ stream: 'grey' }, { stream: 'black' }], [{ ...PIN, jobs: [0, 1] }], {
      parts,
      demand,
    });
    expect(() => play(two)).toThrow('cannot share a build');
    const other = pinned([{}], [{ machine: 'vats 1', jobs: [0], fromHour: 0 }]);
    expect(() => play(other)).toThrow('is not built on it');
    expect(begun(play(pinned([], [])), 'build')).toEqual([]);
  });
});
