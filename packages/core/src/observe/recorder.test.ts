import type { Lab } from '@buildweek/model';
import { PERSON_STATES, WAIT_CAUSES } from '@buildweek/results';
import { describe, expect, it } from 'vitest';
import {
  at,
  attended,
  buildStage,
  constant,
  dated,
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
import { NEVER, order, printing } from '../fixture/printing-lab.ts';
import type { History } from './history.ts';
import { checkLaws } from './laws.ts';

/** Hours of the jobs of a part type, as `build set-up: person` or `build print` for work; zeros left out. */
function hoursOf(history: History, partName: string): Record<string, number> {
  const found = history.partHours.find((hours) => hours.part === partName);
  const hours: Record<string, number> = {};
  found?.steps.forEach(({ stage, phase }, step) => {
    const note = (name: string, milliseconds: number): void => {
      if (milliseconds !== 0) hours[name] = milliseconds / HOUR;
    };
    WAIT_CAUSES.forEach((cause, position) => {
      note(`${stage} ${phase}: ${cause}`, found.waits[step * WAIT_CAUSES.length + position] ?? Number.NaN);
    });
    note(`${stage} ${phase}`, found.work[step] ?? Number.NaN);
  });
  return hours;
}

/** Hours that one job waits for its build, by cause, when others or the clock are in its way. */
function buildWaits(testLab: Lab): Record<string, number> {
  const history = play(testLab);
  expect(checkLaws(history).every((law) => law.holds)).toBe(true);
  return hoursOf(history, 'lever');
}

describe('Waiting for a build', () => {
  const LEVER = part('lever', [buildStage('build', 'printers')], { print: printed(2) });

  it('is charged to the first cause that applies at each instant: machine, carrier, batch, shift, person', () => {
    const testLab = printing(
      { waitedHours: 3 },
      [],
      { count: 1, carrier: 'tanks', setUp: attended('all', 0.5) },
      {
        carriers: [{ name: 'tanks', count: 1 }],
        machines: [
          machine('printers', {
            carrier: 'tanks',
            setUp: attended('all', 0.5),
            launch: { ...NEVER, waitedHours: 3 },
          }),
          machine('others', { carrier: 'tanks' }),
        ],
        parts: [
          LEVER,
          part('ring', [buildStage('build', 'others')], { print: printed(2) }),
          part('cover', [workStage('sand', attended('all', 1))]),
        ],
        demand: [
          // The only tank is in the other machine until 06:00; the lever comes at 05:00 and has waited enough at 08:00…
          dated('ring', [4]),
          dated('lever', [5]),
          // … when the person first does a rush job for an hour.
          { ...dated('cover', [7], { rush: true }), name: 'urgent' },
        ],
      },
    );
    expect(buildWaits(testLab)).toEqual({
      'build set-up: carrier': 1,
      'build set-up: batch': 2,
      'build set-up: person': 1,
      'build set-up': 0.5,
      'build print': 2,
    });
  });

  it('is for a machine while all are taken, and then for the shift while nobody is there', () => {
    const testLab = printing(
      { fullShare: 0 },
      [],
      { capacity: 1, setUp: attended('all', 0.5), count: 1 },
      {
        parts: [
          LEVER,
          part('ring', [buildStage('build', 'printers')], { print: printed(12), material: 'white' }),
        ],
        demand: [dated('ring', [at('mon', '15:30')]), dated('lever', [at('mon', '16:00')])],
      },
    );
    // The ring prints from 16:00 to 04:00.
    expect(buildWaits(testLab)).toMatchObject({ 'build set-up: machine': 12, 'build set-up: shift': 4 });
  });

  it('is for the shift too while somebody is free but has too little time left', () => {
    const testLab = printing(
      { fullShare: 0 },
      [],
      { capacity: 1, setUp: attended('all', 1) },
      {
        parts: [LEVER],
        demand: [dated('lever', [at('mon', '15:30')])],
      },
    );
    expect(buildWaits(testLab)).toMatchObject({ 'build set-up: shift': 16.5 });
  });

  it('is charged by pieces where a job is split: each piece its own wait', () => {
    const testLab = printing(
      { fullShare: 0 },
      [],
      { capacity: 2 },
      {
        parts: [part('lever', [buildStage('build', 'printers')], { print: printed(2) })],
        demand: [order('lever', 1, 3)],
      },
    );
    // The third piece waits two hours for the machine, the other two then two hours for the rest of the job.
    expect(buildWaits(testLab)).toEqual({
      'build set-up: machine': 2 / 3,
      'build unload: rest of the job': 4 / 3,
      'build print': 2,
    });
  });
});

describe('Waiting for hands', () => {
  const benchLab = (more: Partial<Lab>): Lab =>
    lab({
      people: [people('technicians', 2, ['sand'])],
      parts: [
        part('lever', [workStage('sand', attended('sand', 1))]),
        part('pair', [workStage('lift', attended('sand', 2, { persons: 2 }))]),
      ],
      ...more,
    });

  it('is for the shift while nobody with the skill is there or the work would not fit, else for a person', () => {
    const testLab = benchLab({
      people: [people('technicians', 1, ['sand'])],
      demand: [dated('lever', [at('mon', '07:00'), at('mon', '07:30'), at('mon', '15:15')])],
    });
    const hours = hoursOf(play(testLab), 'lever');
    // 1 h and 0.5 h before 08:00, then 1 h for the person; 16.75 h from 15:15 to 08:00.
    expect(hours).toEqual({ 'sand work: shift': 18.25, 'sand work: person': 1, 'sand work': 3 });
  });

  it('is for the shift while too few are there for work of two, and for a person while one of them is busy', () => {
    const testLab = benchLab({
      calendars: [
        { name: 'day', weekly: [{ fromHour: 8, toHour: 16 }], closedDays: [], extra: [] },
        { name: 'late', weekly: [{ fromHour: 10, toHour: 18 }], closedDays: [], extra: [] },
      ],
      people: [people('technicians', 1, ['sand']), people('helpers', 1, ['sand'], { calendar: 'late' })],
      demand: [dated('pair', [9]), dated('lever', [9.5])],
    });
    // One person until 10:00, who sands from 09:30 to 10:30; both are free then.
    expect(hoursOf(play(testLab), 'pair')).toEqual({
      'lift work: shift': 1,
      'lift work: person': 0.5,
      'lift work': 2,
    });
  });

  it('is charged to the phase that is waited for: unloading in the morning, and after a pause too', () => {
    const testLab = printing(
      { fullShare: 0 },
      [],
      { unload: attended('all', 1, { pausable: true }) },
      {
        people: [people('technicians', 1, ['all'])],
        demand: [dated('lever', [at('mon', '14:30')])],
      },
    );
    // Printed at 15:30, unloaded until 16:00 and from 08:00 to 08:30.
    expect(hoursOf(play(testLab), 'lever')).toEqual({
      'build unload: shift': 16,
      'build print': 1,
      'build unload': 1,
    });
  });

  it('is for a batch while a station waits to fill, and for the machine while it is taken', () => {
    const testLab = lab({
      stations: [station('washers', { capacity: 2, fullShare: 1 })],
      parts: [part('lever', [stationStage('wash', 'washers', constant(3))])],
      demand: [dated('lever', [1, 2, 3, 4])],
    });
    // Jobs 0 and 1 run from 02:00 to 05:00; jobs 2 and 3 wait for that from 03:00 and 04:00.
    expect(hoursOf(play(testLab), 'lever')).toEqual({
      'wash run: batch': 1,
      'wash run: machine': 3,
      'wash run': 12,
    });
  });
});

describe('Waits and work of finished jobs', () => {
  it('are the mean over pieces for each job, and together the lead time', () => {
    const history = play(
      printing(
        { fullShare: 0 },
        [],
        { capacity: 3, setUp: attended('all', 0.5), unload: attended('all', 0.25) },
        {
          parts: [
            part('lever', [buildStage('build', 'printers', { move: 'per build' }), waitStage('dry', 2)], {
              print: printed(1, 0.5),
            }),
          ],
          demand: [order('lever', at('mon', '09:00'), 7), order('lever', at('mon', '15:00'), 2)],
        },
      ),
    );
    const sum = Object.values(hoursOf(history, 'lever')).reduce((total, hours) => total + hours, 0);
    const leads = [...(history.jobClasses[0]?.leadTimes ?? [])].reduce(
      (total, time) => total + time / HOUR,
      0,
    );
    expect(history.partHours[0]?.finishedJobs).toBe(2);
    expect(sum).toBeCloseTo(leads, 9);
    expect(history.laws.leadTimeImbalance).toBe(0);
  });
});

describe('The queues and people of a history', () => {
  const testLab = lab({
    people: [people('technicians', 1, ['sand'])],
    parts: [part('lever', [workStage('sand', attended('sand', 2))])],
    demand: [dated('lever', [at('mon', '06:00'), at('mon', '07:30')])],
  });

  it('give the area, visits and waits of each queue, and its length by hour of the week and by week', () => {
    const { queues } = play(testLab, { queueWaits: true });
    expect(queues.map((queue) => [queue.name, queue.kind])).toEqual([
      ['sand', 'people'],
      ['jobs in the lab', 'all'],
    ]);
    const [sand, all] = queues;
    // Two hours, and from 07:30 to 10:00.
    expect(sand).toMatchObject({ area: 4.5 * HOUR, visits: 2, waitSum: 4.5 * HOUR });
    expect([...(sand?.waits ?? [])]).toEqual([2 * HOUR, 2.5 * HOUR]);
    // Over two weeks, of which the second is empty.
    expect([...(sand?.byHourOfWeek.slice(5, 11) ?? [])]).toEqual([0, 0.5, 0.75, 0.5, 0.5, 0]);
    expect([...(sand?.byWeek ?? [])]).toEqual([4.5 / 168, 0]);
    expect(all).toMatchObject({ area: 8.5 * HOUR, visits: 2, waitSum: 8.5 * HOUR });
  });

  it('give what people did, by stage, by state and by hour of the week', () => {
    const [group] = play(testLab, { weeks: 1 }).people;
    const state = (name: (typeof PERSON_STATES)[number]): number =>
      (group?.timeInState[PERSON_STATES.indexOf(name)] ?? Number.NaN) / HOUR;
    expect([state('off'), state('idle'), state('work'), state('overtime')]).toEqual([128, 36, 4, 0]);
    expect(group?.stages).toEqual(['sand']);
    expect([...(group?.timeByStage ?? [])]).toEqual([4 * HOUR]);
    expect([...(group?.busyByHourOfWeek.slice(7, 13) ?? [])]).toEqual([0, 1, 1, 1, 1, 0]);
    expect([...(group?.onDutyByHourOfWeek.slice(7, 17) ?? [])]).toEqual([0, 1, 1, 1, 1, 1, 1, 1, 1, 0]);
  });

  it('cut what began before the measured weeks or goes on after them', () => {
    const long = lab({
      stations: [station('ovens')],
      parts: [part('lever', [stationStage('burn', 'ovens', constant(200))])],
      demand: [dated('lever', [100, 150])],
    });
    const history = play(long, { ignoredWeeks: 1, weeks: 1, capWeeks: 3 });
    // The first is in the oven from 100 to 300, the second waits from 150 to 300 and burns to 500.
    expect([...(history.stations[0]?.timeInState ?? [])].reduce((sum, time) => sum + time, 0)).toBe(
      168 * HOUR,
    );
    const oven = history.queues.find((queue) => queue.kind === 'station');
    expect(oven).toMatchObject({ area: 132 * HOUR, visits: 1, waitSum: 150 * HOUR });
    expect(history.laws.jobArea).toBe((132 + 168) * HOUR);
    expect(history.jobClasses[0]).toMatchObject({ arrived: 0 });
  });
});
