import type { Lab, PartType, Stage } from '@buildweek/model';
import { WAIT_CAUSES } from '@buildweek/results';
import { describe, expect, it } from 'vitest';
import {
  attended,
  buildStage,
  constant,
  exponential,
  HOUR,
  lab,
  machine,
  part,
  people,
  play,
  printed,
  station,
  stationStage,
  waitStage,
  workStage,
} from '../fixture/lab.ts';
import { order, printing } from '../fixture/printing-lab.ts';
import { begun, contents, ended, finished } from '../fixture/timeline.ts';

const ALWAYS = { people: [people('technicians', 1, ['all'], { calendar: 'always' })] };

/** Twenty-five pieces on a machine for ten, an hour for each build, and then these stages. */
function splitOver(move: 'per job' | 'per build', following: readonly Stage[]): Lab {
  return printing(
    { fullShare: 0 },
    [],
    {},
    {
      ...ALWAYS,
      parts: [
        part('lever', [buildStage('build', 'printers', { move }), ...following], { print: printed(1) }),
      ],
      demand: [order('lever', 1, 25)],
    },
  );
}

/** Piece hours that a job waited for the rest of itself. */
function restOfJob(testLab: Lab): number {
  const [hours] = play(testLab).partHours;
  const rest = WAIT_CAUSES.indexOf('rest of the job');
  return (hours?.waits ?? [])
    .filter((_, entry) => entry % WAIT_CAUSES.length === rest)
    .reduce((sum, wait) => sum + wait / HOUR, 0);
}

describe('The pieces of a job', () => {
  it('wait for their whole job before the next stage', () => {
    const testLab = splitOver('per job', [workStage('sand', attended('all', 2))]);
    expect(contents(play(testLab), 'sand', 'work')).toEqual(['mon 04:00 on null: 25 of job 0']);
    // Ten pieces wait two hours, ten one hour: 30 of 25 pieces' hours.
    expect(restOfJob(testLab)).toBeCloseTo(30 / 25, 12);
  });

  it('go on as they are built where the stage says so, with their share of the work, and end together', () => {
    const testLab = splitOver('per build', [workStage('sand', attended('all', 2.5))]);
    const history = play(testLab);
    expect(contents(history, 'sand', 'work')).toEqual([
      'mon 02:00 on null: 10 of job 0',
      'mon 03:00 on null: 10 of job 0',
      'mon 04:00 on null: 5 of job 0',
    ]);
    expect(finished(history)).toEqual(['mon 04:30 job 0']);
    // The first ten are sanded at 03:00 and wait for the last five until 04:30, the next ten at 04:00.
    expect(restOfJob(testLab)).toBeCloseTo((10 * 1.5 + 10 * 0.5) / 25, 12);
  });

  it('come together again at the next stage that waits for the whole job', () => {
    const testLab = splitOver('per build', [
      waitStage('cool', 1, { move: 'per job' }),
      workStage('sand', attended('all', 1)),
    ]);
    expect(contents(play(testLab), 'sand', 'work')).toEqual(['mon 05:00 on null: 25 of job 0']);
  });

  it('end their job when the last good part ends', () => {
    const history = play(splitOver('per build', []));
    expect(finished(history)).toEqual(['mon 04:00 job 0']);
    expect([...(history.jobClasses[0]?.leadTimes ?? [])]).toEqual([3 * HOUR]);
  });

  it('are one load again when they meet in a later build', () => {
    const route = (following: readonly Stage[]): PartType =>
      part(
        'lever',
        [buildStage('build', 'printers', { move: 'per build' }), buildStage('sinter', 'ovens'), ...following],
        { print: printed(1) },
      );
    const meeting = (following: readonly Stage[]): Lab =>
      printing(
        {},
        [],
        {},
        {
          ...ALWAYS,
          machines: [
            machine('printers', { capacity: 2 }),
            machine('ovens', {
              capacity: 4,
              launch: { ...machine('ovens').launch, fullShare: 1 },
            }),
          ],
          parts: [route(following)],
          demand: [order('lever', 1, 4)],
        },
      );
    const last = play(meeting([]));
    expect(contents(last, 'sinter', 'print')).toEqual(['mon 03:00 on ovens 1: 2 of job 0, 2 of job 0']);
    expect(finished(last)).toEqual(['mon 04:00 job 0']);
    const sanded = play(meeting([workStage('sand', attended('all', 1))]));
    expect(contents(sanded, 'sand', 'work')).toEqual(['mon 04:00 on null: 4 of job 0']);
  });
});

describe('A stage of level build', () => {
  const route = (following: readonly Stage[]): Pick<Lab, 'people' | 'parts' | 'demand' | 'stations'> => ({
    ...ALWAYS,
    stations: [station('washers', { capacity: 1, unit: 'builds' })],
    parts: [
      part('lever', [buildStage('build', 'printers', { move: 'per build' }), ...following], {
        print: printed(1),
      }),
    ],
    demand: [order('lever', 1, 3), order('lever', 1, 4)],
  });
  const together = { level: 'build', move: 'per build' } as const;

  it('takes everything that was built together, and after the last of them the jobs part', () => {
    const testLab = printing(
      { fixedHours: [10] },
      [],
      {},
      route([
        stationStage('wash', 'washers', constant(2), together),
        workStage('rinse', attended('all', 1), { ...together, basis: 'build' }),
        workStage('sand', attended('all', 1)),
      ]),
    );
    const history = play(testLab);
    expect(contents(history, 'wash', 'run')).toEqual(['mon 11:00 on washers 1: 3 of job 0, 4 of job 1']);
    expect(contents(history, 'rinse', 'work')).toEqual(['mon 13:00 on null: 3 of job 0, 4 of job 1']);
    expect(begun(history, 'sand')).toEqual([
      'mon 14:00 job 0 by technicians 1',
      'mon 15:00 job 1 by technicians 1',
    ]);
  });

  it('takes the sum of the work of its jobs and pieces where the work is per job or per piece', () => {
    const worked = (basis: 'job' | 'part' | 'build'): string[] =>
      ended(
        play(
          printing(
            { fixedHours: [10] },
            [],
            {},
            route([workStage('rinse', attended('all', 1), { ...together, basis })]),
          ),
        ),
        'rinse',
      );
    expect(worked('build')[0]).toMatch(/^mon 12:00/);
    expect(worked('job')[0]).toMatch(/^mon 13:00/);
    expect(worked('part')[0]).toMatch(/^mon 18:00/);
  });

  it('draws once for the build, from the streams of its machine', () => {
    const dried = (hour: number): number => {
      const drying: Stage = { ...waitStage('dry', 0, together), duration: exponential(3) };
      const testLab = printing(
        { fullShare: 0 },
        [],
        {},
        { ...route([drying]), demand: [order('lever', hour, 3)] },
      );
      const trace = (play(testLab).trace ?? []).filter((entry) => entry.stage === 'dry');
      return (trace[1]?.time ?? 0) - (trace[0]?.time ?? 0);
    };
    expect(dried(1)).toBeGreaterThan(0);
    expect(dried(30)).toBe(dried(1));
  });

  it('serves equal builds of one job in the order in which they became ready', () => {
    const testLab = printing(
      { fullShare: 0 },
      [],
      { count: 2, capacity: 2 },
      {
        ...route([stationStage('wash', 'washers', constant(5), together)]),
        parts: [
          part(
            'lever',
            [
              buildStage('build', 'printers', { move: 'per build' }),
              stationStage('wash', 'washers', constant(5), together),
            ],
            { print: printed(0, 1) },
          ),
          part(
            'ring',
            [
              buildStage('build', 'others', { move: 'per build' }),
              stationStage('wash', 'washers', constant(5), together),
            ],
            { print: printed(0) },
          ),
        ],
        machines: [machine('printers', { count: 2, capacity: 2 }), machine('others')],
        demand: [order('ring', 0, 1), order('lever', 1, 3)],
      },
    );
    // Two pieces of the lever are built from 01:00 to 03:00, the third to 02:00; the washer is taken until 05:00.
    expect(contents(play(testLab), 'wash', 'run')).toEqual([
      'mon 00:00 on washers 1: 1 of job 0',
      'mon 05:00 on washers 1: 1 of job 1',
      'mon 10:00 on washers 1: 2 of job 1',
    ]);
  });
});

describe('A plain wait', () => {
  it('needs nobody and goes on day and night, for all jobs at once', () => {
    const testLab = lab({
      parts: [part('lever', [waitStage('dry', 10)])],
      demand: [order('lever', 1, 1), order('lever', 2, 5)],
    });
    expect(ended(play(testLab), 'dry')).toEqual(['mon 11:00 job 0', 'mon 12:00 job 1']);
  });
});

describe('Random work of a split job', () => {
  it('is drawn anew for each lot, keyed by the job, so that what others do does not change it', () => {
    const sanded = (others: readonly number[]): number[] => {
      const testLab = printing(
        { fullShare: 0 },
        [],
        {},
        {
          people: [people('technicians', 9, ['all'], { calendar: 'always' })],
          parts: [
            part(
              'lever',
              [
                buildStage('build', 'printers', { move: 'per build' }),
                workStage('sand', { ...attended('all', 1), duration: exponential(1) }, { basis: 'part' }),
              ],
              { print: printed(1) },
            ),
          ],
          demand: [order('lever', 1, 25), ...others.map((hour) => order('lever', hour, 1, { rushShare: 1 }))],
        },
      );
      const trace = (play(testLab).trace ?? []).filter((entry) => entry.stage === 'sand' && entry.job === 0);
      const starts = trace.filter((entry) => entry.what === 'step starts').sort((a, b) => a.time - b.time);
      const total = trace.reduce(
        (sum, entry) => sum + (entry.what === 'step ends' ? entry.time : -entry.time),
        0,
      );
      return [starts.length, total];
    };
    expect(sanded([])[0]).toBe(3);
    expect(sanded([2.5, 3.5])).toEqual(sanded([]));
  });
});
