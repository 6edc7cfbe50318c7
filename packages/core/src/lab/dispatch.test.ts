import type { DemandStream, Lab, WorkKind } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import {
  at,
  attended,
  buildStage,
  clock,
  constant,
  dated,
  lab,
  lines,
  machine,
  part,
  people,
  play,
  printed,
  station,
  stationStage,
  weekdays,
  workStage,
} from '../fixture/lab.ts';
import { begun, finished } from '../fixture/timeline.ts';

const CALENDARS = [
  { name: 'day', weekly: weekdays([8, 16]), closedDays: [], extra: [] },
  { name: 'morning', weekly: weekdays([8, 12]), closedDays: [], extra: [] },
  { name: 'afternoon', weekly: weekdays([12, 16]), closedDays: [], extra: [] },
];

/** Bench work by anybody with the skill `sand`. */
function benchLab(hours: number, more: Partial<Lab>): Lab {
  return lab({
    calendars: CALENDARS,
    people: [people('technicians', 1, ['sand'])],
    parts: [part('lever', [workStage('sand', attended('sand', hours))])],
    ...more,
  });
}

describe('Dispatch at one instant', () => {
  it('handles first everything that ends, then calendar changes, then arrivals, and then starts work', () => {
    const history = play(
      benchLab(4, {
        people: [
          people('morning', 1, ['sand'], { calendar: 'morning' }),
          people('afternoon', 1, ['sand'], { calendar: 'afternoon' }),
        ],
        demand: [
          dated('lever', [at('mon', '08:00'), at('mon', '10:00')]),
          { ...dated('lever', [at('mon', '12:00')], { rush: true }), name: 'urgent' },
        ],
      }),
    );
    expect(lines(history, (entry) => clock(entry.time) === 'mon 12:00')).toEqual([
      'mon 12:00 step ends job 0 sand by morning 1',
      'mon 12:00 job ends job 0',
      'mon 12:00 off duty by morning 1',
      'mon 12:00 on duty by afternoon 1',
      'mon 12:00 job arrives job 2',
      'mon 12:00 step starts job 2 sand by afternoon 1',
    ]);
  });

  it('handles what happens at the very start of the plan before it starts work on what stands there', () => {
    const history = play(
      lab({
        stations: [station('washer')],
        parts: [part('lever', [stationStage('wash', 'washer', constant(1))])],
        demand: [dated('lever', [0], { rush: true })],
        initialState: {
          jobs: [
            {
              stream: 'lever',
              quantity: 1,
              rush: false,
              arrivedAtHour: -1,
              dueAtHour: null,
              stage: 'wash',
              remainingHours: null,
            },
          ],
          machines: [],
        },
      }),
    );
    expect(begun(history, 'wash')).toEqual(['mon 00:00 job 1 on washer 1', 'mon 01:00 job 0 on washer 1']);
  });

  it('lets work of no length end at the same instant and repeats until nothing more can start', () => {
    const history = play(
      benchLab(0, {
        parts: [
          part('lever', [
            workStage('sand', attended('sand', 0)),
            workStage('look', attended('sand', 0)),
            workStage('pack', attended('sand', 1)),
          ]),
        ],
        demand: [dated('lever', [at('mon', '09:00'), at('mon', '09:00')])],
      }),
    );
    expect(lines(history, (entry) => entry.what === 'step starts')).toEqual([
      'mon 09:00 step starts job 0 sand by technicians 1',
      'mon 09:00 step starts job 0 look by technicians 1',
      'mon 09:00 step starts job 0 pack by technicians 1',
      'mon 10:00 step starts job 1 sand by technicians 1',
      'mon 10:00 step starts job 1 look by technicians 1',
      'mon 10:00 step starts job 1 pack by technicians 1',
    ]);
    expect(finished(history)).toEqual(['mon 10:00 job 0', 'mon 11:00 job 1']);
  });
});

/** Seven jobs that come in at night in the wrong order; one technician who does half an hour of each. */
function mixedLab(order: readonly WorkKind[]): Lab {
  const within = (hours: number): Partial<DemandStream> => ({ due: { kind: 'clock', hours } });
  return lab({
    people: [people('technicians', 1, ['all'])],
    machines: [machine('printers', { count: 2, setUp: attended('all', 0.5) })],
    stations: [station('washers')],
    parts: [
      part('bench', [workStage('step', attended('all', 0.5))]),
      part('station', [
        stationStage('step', 'washers', constant(0), { load: attended('all', 0.5), unload: null }),
      ]),
      part('machine', [buildStage('step', 'printers')], { print: printed(100) }),
    ],
    demand: [
      { ...dated('bench', [1]), name: 'without promise' },
      { ...dated('bench', [2]), ...within(60), name: 'later promise' },
      { ...dated('bench', [3]), ...within(50), name: 'earlier promise' },
      { ...dated('station', [4]), name: 'to the station' },
      { ...dated('machine', [5]), name: 'to the machine' },
      { ...dated('bench', [6], { rush: true }), name: 'rush' },
      { ...dated('machine', [7], { rush: true }), name: 'rush to the machine' },
      { ...dated('bench', [7.5]), name: 'without promise, later' },
    ],
    dispatch: { order, fitOn: 'typical', within: 'promise', rushInterrupts: false },
  });
}

/** Numbers of the jobs in the order in which a technician began with them. */
function servedOrder(testLab: Lab): number[] {
  return (play(testLab).trace ?? [])
    .filter((entry) => entry.what === 'step starts' && entry.persons.length > 0)
    .map((entry) => entry.job);
}

describe('Dispatch', () => {
  it('looks at all queues at once: rush first, then machines, stations, benches; in each the earliest promise, then arrival', () => {
    // Job 6 is a rush job for a machine, 5 rush at the bench, 4 a machine, 3 a station; of the benches 2 is
    // promised before 1, and 0 and 7 have no promise.
    expect(servedOrder(mixedLab(['machine', 'station', 'bench']))).toEqual([6, 5, 4, 3, 2, 1, 0, 7]);
  });

  it('serves the kinds of work in another order when the lab says so, rush still first', () => {
    expect(servedOrder(mixedLab(['bench', 'station', 'machine']))).toEqual([5, 6, 2, 1, 0, 7, 3, 4]);
    expect(servedOrder(mixedLab(['station', 'machine', 'bench']))).toEqual([6, 5, 3, 4, 2, 1, 0, 7]);
  });

  it('counts unloading as work that frees a machine, before stations and benches with an earlier promise', () => {
    const history = play(
      lab({
        people: [people('technicians', 1, ['all'])],
        machines: [machine('printers', { unload: attended('all', 0.25) })],
        stations: [station('washers')],
        parts: [
          part('printed', [buildStage('build', 'printers')], { print: printed(4) }),
          part('washed', [stationStage('wash', 'washers', constant(1), { load: attended('all', 0.25) })]),
          part('sanded', [workStage('sand', attended('all', 0.25))]),
        ],
        demand: [
          { ...dated('sanded', [0]), due: { kind: 'clock', hours: 8 } },
          { ...dated('washed', [0.5]), due: { kind: 'clock', hours: 9 } },
          dated('printed', [1]),
        ],
      }),
    );
    expect(begun(history, 'build', 'unload')).toEqual(['mon 08:00 job 2 on printers 1 by technicians 1']);
    expect(begun(history, 'wash', 'load')).toEqual(['mon 08:15 job 1 on washers 1 by technicians 1']);
    expect(begun(history, 'sand')).toEqual(['mon 08:30 job 0 by technicians 1']);
  });

  it('gives work to the free qualified person with the fewest skills, then the lowest number', () => {
    const history = play(
      benchLab(1, {
        people: [
          people('all-rounders', 1, ['sand', 'print']),
          people('sanders', 2, ['sand']),
          people('printers', 1, ['print']),
        ],
        demand: [dated('lever', [1, 2, 3, 4])],
      }),
    );
    expect(begun(history, 'sand')).toEqual([
      'mon 08:00 job 0 by sanders 1',
      'mon 08:00 job 1 by sanders 2',
      'mon 08:00 job 2 by all-rounders 1',
      'mon 09:00 job 3 by sanders 1',
    ]);
  });

  it('goes on to the next candidate when nobody can do the first-ranked work', () => {
    const history = play(
      benchLab(1, {
        parts: [
          part('long', [workStage('sand', attended('sand', 1))]),
          part('short', [workStage('sand', attended('sand', 0.25))]),
        ],
        demand: [dated('long', [at('mon', '15:30')], { rush: true }), dated('short', [at('mon', '15:30')])],
      }),
    );
    expect(begun(history, 'sand')).toEqual([
      'mon 15:30 job 1 by technicians 1',
      'tue 08:00 job 0 by technicians 1',
    ]);
  });

  it('reserves nobody, and takes no running work away for a rush job', () => {
    const history = play(
      benchLab(4, {
        parts: [part('lever', [workStage('sand', attended('sand', 4, { pausable: true }))])],
        demand: [
          dated('lever', [at('mon', '08:00'), at('mon', '08:30')]),
          { ...dated('lever', [at('mon', '09:00')], { rush: true }), name: 'urgent' },
        ],
      }),
    );
    expect(begun(history, 'sand')).toEqual([
      'mon 08:00 job 0 by technicians 1',
      'mon 12:00 job 2 by technicians 1',
      'tue 08:00 job 1 by technicians 1',
    ]);
  });
});
