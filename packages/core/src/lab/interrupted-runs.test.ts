import type { Breakdown, Lab } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import {
  at,
  attended,
  buildStage,
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
  waitStage,
  workStage,
} from '../fixture/lab.ts';

const fixed = (value: number) => ({ kind: 'constant', value }) as const;

/** Fails so many hours after the start, and is back an hour after people know. */
function fuse(hour: number, more: Partial<Breakdown> = {}): Breakdown {
  return {
    name: 'fuse',
    by: 'clock',
    between: fixed(hour),
    effect: 'loses the build',
    repair: { kind: 'service', response: fixed(0.5), visit: fixed(0.5), calendar: null },
    ...more,
  };
}

/** One technician from 8 to 16, one machine, and a print of ten hours that is asked for at an hour. */
function printing(more: Parameters<typeof machine>[1], hour: number, rest: Partial<Lab> = {}): Lab {
  return lab({
    people: [people('technicians', 1, ['all'])],
    machines: [machine('printers', more)],
    parts: [part('lever', [buildStage('build', 'printers')], { print: printed(10) })],
    demand: [dated('lever', [hour])],
    ...rest,
  });
}

/** A run of two hours in a station that somebody attends. */
function attendedRun(more: Parameters<typeof station>[1], pausable = false, hour = 8): Lab {
  const run = stationStage('blast', 'cabinet', constant(2), {
    runAttendance: { skill: 'all', persons: 1, pausable },
    unload: attended('all', 0.25),
  });
  return lab({
    people: [people('technicians', 1, ['all'])],
    stations: [station('cabinet', more)],
    parts: [part('lever', [run])],
    demand: [dated('lever', [hour])],
  });
}

const of = (testLab: Lab, until: number, ...kinds: string[]): string[] =>
  lines(play(testLab), (entry) => kinds.includes(entry.what) && entry.time < until * 3_600_000);

describe('A run that a breakdown stops', () => {
  it('is lost in print only: a warm-up that a breakdown stops goes on after the repair', () => {
    // The fuse blows at 9:00, an hour into a warm-up of two.
    const warming = printing({ warmUp: constant(2), breakdowns: [fuse(9)] }, 8);
    expect(of(warming, 12, 'step starts', 'step is broken off')).toEqual([
      'mon 08:00 step starts job 0 build warm-up on printers 1',
      'mon 09:00 step is broken off job 0 build warm-up on printers 1',
      'mon 10:00 step starts job 0 build warm-up on printers 1',
      'mon 11:00 step starts job 0 build print on printers 1',
    ]);
  });

  it('is lost in the first layers, which are a part of the print', () => {
    const watching = printing(
      { setUp: attended('all', 0.5), firstLayers: attended('all', 1), breakdowns: [fuse(9)] },
      8,
    );
    expect(of(watching, 12, 'step starts')).toEqual([
      'mon 08:00 step starts job 0 build set-up on printers 1 by technicians 1',
      'mon 08:30 step starts job 0 build first layers on printers 1 by technicians 1',
      'mon 10:00 step starts job 0 build set-up on printers 1 by technicians 1',
      'mon 10:30 step starts job 0 build first layers on printers 1 by technicians 1',
      'mon 11:30 step starts job 0 build print on printers 1',
    ]);
  });

  it('is seen to stop by whoever is at work on the machine, however others would notice', () => {
    // Noticed on arrival only, a failure in a set-up at 9:00 would wait for the next morning.
    const settingUp = printing(
      { setUp: attended('all', 2), noticing: { kind: 'on arrival' }, breakdowns: [fuse(9)] },
      8,
    );
    expect(of(settingUp, 24, 'is repaired')).toEqual(['mon 10:00 is repaired fuse on printers 1']);
  });

  it('is not to be noticed again when people had noticed that it has ended', () => {
    // The print ends at 2:00 and is seen at 8:00; unloading is broken off at 9:00 and goes on after the repair.
    const unloading = printing(
      { unload: attended('all', 2), noticing: { kind: 'on arrival' }, breakdowns: [fuse(33)] },
      16,
    );
    expect(of(unloading, 48, 'step starts').slice(1)).toEqual([
      'tue 08:00 step starts job 0 build unload on printers 1 by technicians 1',
      'tue 10:00 step starts job 0 build unload on printers 1 by technicians 1',
    ]);
  });

  it('of a station keeps what has been done of it, also when it had paused, if it goes on after the repair', () => {
    // An hour is done when the day ends at 16:00; the fuse blows in the night.
    const effect = 'build goes on after the repair';
    const paused = attendedRun({ breakdowns: [fuse(20, { effect })] }, true, 15);
    expect(of(paused, 48, 'step ends')).toEqual([
      'tue 10:00 step ends job 0 blast run on cabinet 1 by technicians 1',
      'tue 10:15 step ends job 0 blast unload on cabinet 1 by technicians 1',
    ]);
  });
});

describe('An attended run of a station', () => {
  it('is running too: age advances in it, and a failure falls into it', () => {
    const effect = 'build goes on after the repair';
    const wearing = attendedRun({ breakdowns: [fuse(1.5, { by: 'running hours', effect })] });
    expect(of(wearing, 14, 'breaks down', 'step ends')).toEqual([
      'mon 09:30 breaks down fuse on cabinet 1',
      'mon 11:00 step ends job 0 blast run on cabinet 1 by technicians 1',
      'mon 11:15 step ends job 0 blast unload on cabinet 1 by technicians 1',
    ]);
  });

  it('need not be noticed to have ended by whoever attended it', () => {
    expect(of(attendedRun({ noticing: { kind: 'on arrival' } }), 14, 'job ends')).toEqual([
      'mon 10:15 job ends job 0',
    ]);
  });
});

describe('Permission to run unattended', () => {
  const evenings = [0, 1, 2, 3, 4].map((day) => ({ fromHour: day * 24 + 16, toHour: day * 24 + 21 }));

  it('is judged by all that goes into the build, not by its first-ranked job alone', () => {
    // People and permission cover 8:00 to 21:00: one piece takes 5 h, two pieces 10 h, a clip 2 h.
    const twoJobs = printing({ capacity: 2, unattendedHours: evenings }, 12, {
      parts: [
        part('lever', [buildStage('build', 'printers')], { print: printed(0, 5) }),
        part('clip', [buildStage('build', 'printers')], { print: printed(2), material: 'white' }),
      ],
      demand: [dated('lever', [12, 12]), dated('clip', [13])],
    });
    expect(of(twoJobs, 48, 'step starts')).toEqual([
      'mon 13:00 step starts job 2 build print on printers 1',
      'tue 08:00 step starts job 1 build print on printers 1',
      'tue 08:00 step starts job 0 build print on printers 1',
    ]);
  });

  it('is needed for a change of material that runs by itself too', () => {
    const changing = printing(
      {
        initialMaterial: 'white',
        materialChanges: [{ from: null, to: 'grey', duration: constant(2), attended: false }],
        unattendedHours: evenings,
      },
      at('mon', '10:00'),
    );
    // Twelve hours from 10:00 on would end at 22:00.
    expect(of(changing, 48, 'step starts')[0]).toBe('tue 08:00 step starts job 0 build set-up on printers 1');
  });
});

describe('Upkeep', () => {
  const greasing = (name: string, by: 'clock' | 'running hours', hours: number) => ({
    name,
    kind: 'maintenance' as const,
    by,
    every: fixed(hours),
    work: attended('all', 1),
    duration: null,
  });

  it('does first what fell due first, also when that was in the middle of a print', () => {
    // After nine hours of print, at 17:00, the belt falls due; the filter at 17:30; the print ends at 18:00.
    const chores = [greasing('filter', 'clock', 17.5), greasing('belt', 'running hours', 9)];
    const two = printing({ chores }, 8);
    expect(lines(play(two), (entry) => entry.what === 'chore ends' && entry.time < 40 * 3_600_000)).toEqual([
      'tue 09:00 chore ends belt on printers 1',
      'tue 10:00 chore ends filter on printers 1',
    ]);
  });

  it('ranks with the work at its unit: that of a machine before that of a station, also when it is a repair', () => {
    const repair = { kind: 'own', work: attended('all', 1) } as const;
    const both = lab({
      people: [people('technicians', 1, ['all'])],
      machines: [machine('printers', { breakdowns: [fuse(6, { repair })] })],
      stations: [station('cabinet', { breakdowns: [fuse(5, { repair })] })],
    });
    expect(of(both, 12, 'is repaired')).toEqual([
      'mon 09:00 is repaired fuse on printers 1',
      'mon 10:00 is repaired fuse on cabinet 1',
    ]);
  });
});

describe('A carrier', () => {
  it('is held until all that stands on it has passed the stage that empties it for its part', () => {
    // The clip is taken off the platform at the end of its build, the lever when it has dried for two hours.
    const dry = { ...waitStage('dry', 2), level: 'build', emptiesCarrier: true } as const;
    const testLab = lab({
      machines: [machine('printers', { capacity: 2, carrier: 'platforms' })],
      carriers: [{ name: 'platforms', count: 1 }],
      parts: [
        part('lever', [buildStage('build', 'printers'), dry], { print: printed(1) }),
        part('clip', [buildStage('build', 'printers', { emptiesCarrier: true }), dry], { print: printed(1) }),
      ],
      demand: [dated('lever', [0]), dated('clip', [0]), { ...dated('lever', [0.5]), name: 'another' }],
    });
    expect(of(testLab, 12, 'step starts').filter((line) => line.includes('print'))).toEqual([
      'mon 00:00 step starts job 1 build print on printers 1',
      'mon 00:00 step starts job 0 build print on printers 1',
      'mon 03:00 step starts job 2 build print on printers 1',
    ]);
  });
});

describe('The last call', () => {
  it('comes earlier when material has to be changed, by the time of the change', () => {
    const changing = printing(
      {
        setUp: attended('all', 0.5),
        initialMaterial: 'white',
        materialChanges: [{ from: null, to: 'grey', duration: constant(1), attended: true }],
        launch: {
          fullShare: null,
          waitedHours: null,
          beforeClosing: true,
          fixedHours: null,
          promiseAtRisk: false,
          preferAttendedEnd: false,
        },
      },
      9,
    );
    expect(of(changing, 24, 'step starts')[0]).toBe(
      'mon 14:30 step starts job 0 build set-up on printers 1 by technicians 1',
    );
  });
});

describe('A rush job', () => {
  it('may interrupt the work of two persons when it needs both', () => {
    const sand = part('lever', [workStage('sand', attended('all', 4, { pausable: true }))]);
    const press = part('clip', [workStage('press', attended('all', 1, { persons: 2 }))]);
    const both = lab({
      people: [people('technicians', 2, ['all'])],
      parts: [sand, press],
      demand: [dated('lever', [8, 8]), dated('clip', [9], { rush: true })],
      dispatch: {
        order: ['machine', 'station', 'bench'],
        fitOn: 'typical',
        within: 'promise',
        rushInterrupts: true,
      },
    });
    expect(of(both, 14, 'step pauses', 'step starts').slice(2)).toEqual([
      'mon 09:00 step pauses job 1 sand by technicians 2',
      'mon 09:00 step pauses job 0 sand by technicians 1',
      'mon 09:00 step starts job 2 press by technicians 1 and technicians 2',
    ]);
  });
});
