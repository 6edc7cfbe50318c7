import type { DemandStream, Lab, PartType, StationGroup } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import {
  at,
  attended,
  buildStage,
  clock,
  constant,
  lab,
  machine,
  part,
  people,
  play,
  printed,
  station,
  stationStage,
  waitStage,
} from '../fixture/lab.ts';
import { NEVER, order, printing } from '../fixture/printing-lab.ts';
import { block, PLATFORM, shapedGroup, shapedPart } from '../fixture/shaped-lab.ts';
import { begun, contents, finished } from '../fixture/timeline.ts';

const built = (name: string, more: Partial<PartType> = {}): PartType =>
  part(name, [buildStage('build', 'printers')], { print: printed(1), ...more });

describe('A build', () => {
  it('takes its material from the first-ranked job and adds others in rank order, misfits skipped', () => {
    const testLab = printing(
      { fixedHours: [10, 34] },
      [],
      {},
      {
        parts: [built('lever'), built('ring', { material: 'white' }), built('cover', { settings: 'fine' })],
        demand: [
          order('lever', 1, 6),
          order('lever', 2, 5),
          order('ring', 3, 2),
          order('cover', 4, 1),
          order('lever', 5, 4),
          order('lever', 6, 1, {
            arrivals: { kind: 'dated', jobs: [{ atHour: 6, quantity: null, rush: true }] },
          }),
        ],
      },
    );
    // The rush job 5 is first, then jobs 0 (6 of the 9 left), 1 does not fit, 4 does not fit any more.
    expect(contents(play(testLab), 'build', 'print')).toEqual([
      'mon 10:00 on printers 1: 6 of job 0, 1 of job 5',
      'mon 11:00 on printers 1: 5 of job 1, 4 of job 4',
      'mon 12:00 on printers 1: 2 of job 2',
      'mon 13:00 on printers 1: 1 of job 3',
    ]);
  });

  it('holds only parts whose following stages of level build agree', () => {
    const withTail = (name: string, hours: number): PartType =>
      part(
        name,
        [
          buildStage('build', 'printers', { move: 'per build' }),
          waitStage('cool', hours, { level: 'build', move: 'per build' }),
          waitStage('rest', hours),
        ],
        { print: printed(1) },
      );
    const testLab = printing(
      { fixedHours: [10] },
      [],
      {},
      {
        parts: [withTail('lever', 1), withTail('ring', 2), withTail('cover', 1)],
        demand: [order('lever', 1, 1), order('ring', 2, 1), order('cover', 3, 1)],
      },
    );
    expect(contents(play(testLab), 'build', 'print')).toEqual([
      'mon 10:00 on printers 1: 1 of job 0, 1 of job 2',
      'mon 11:00 on printers 1: 1 of job 1',
    ]);
  });

  it('is fixed in content when its set-up starts: who comes before it joins, who comes later does not', () => {
    const testLab = printing(
      { fullShare: 0 },
      [
        [5, 1],
        [7, 1],
        [8.25, 1],
      ],
      { setUp: attended('all', 0.5) },
    );
    expect(contents(play(testLab), 'build', 'set-up')).toEqual([
      'mon 08:00 on printers 1: 1 of job 0, 1 of job 1',
      'mon 09:30 on printers 1: 1 of job 2',
    ]);
  });

  it('is fixed in content when its file preparation starts, where builds are prepared', () => {
    const testLab = printing(
      { fullShare: 0 },
      [
        [7, 1],
        [8.25, 1],
        [8.75, 1],
      ],
      { prepare: attended('office', 0.5), setUp: attended('all', 0.5) },
      {
        people: [people('office', 1, ['office']), people('technicians', 1, ['all'])],
      },
    );
    expect(contents(play(testLab), 'build', 'prepare')).toEqual([
      'mon 08:00 on printers 1: 1 of job 0',
      'mon 10:00 on printers 1: 1 of job 1, 1 of job 2',
    ]);
    expect(contents(play(testLab), 'build', 'set-up')).toEqual([
      'mon 08:30 on printers 1: 1 of job 0',
      'mon 10:30 on printers 1: 1 of job 1, 1 of job 2',
    ]);
  });

  it('is fixed at once where no phase before the print needs anybody', () => {
    const testLab = printing({ fullShare: 0 }, [
      [5, 1],
      [5.5, 1],
    ]);
    expect(contents(play(testLab), 'build', 'print')).toEqual([
      'mon 05:00 on printers 1: 1 of job 0',
      'mon 06:00 on printers 1: 1 of job 1',
    ]);
  });

  it('takes as many whole pieces as fit from a job that is larger than the machine, the rest stays in the queue', () => {
    expect(contents(play(printing({ fullShare: 0 }, [[5, 25]])), 'build', 'print')).toEqual([
      'mon 05:00 on printers 1: 10 of job 0',
      'mon 06:00 on printers 1: 10 of job 0',
      'mon 07:00 on printers 1: 5 of job 0',
    ]);
    const large = { parts: [built('lever', { space: 3 }), built('ring')] };
    const demand = [order('lever', 5, 5), order('ring', 5, 1)];
    // Three pieces of three, and a small one in the unit that is left.
    expect(
      contents(play(printing({ fixedHours: [10] }, [], {}, { ...large, demand })), 'build', 'print'),
    ).toEqual(['mon 10:00 on printers 1: 3 of job 0, 1 of job 1', 'mon 11:00 on printers 1: 2 of job 0']);
  });

  it('never splits a job that an empty machine could hold', () => {
    const testLab = printing({ fixedHours: [10] }, [
      [5, 6],
      [6, 7],
      [7, 25],
    ]);
    expect(contents(play(testLab), 'build', 'print')).toEqual([
      'mon 10:00 on printers 1: 6 of job 0',
      'mon 11:00 on printers 1: 7 of job 1',
      'mon 12:00 on printers 1: 10 of job 2',
      'mon 13:00 on printers 1: 10 of job 2',
      'mon 14:00 on printers 1: 5 of job 2',
    ]);
  });

  it('prints for the longest time per build among its parts and the sum of the times per piece', () => {
    const testLab = printing(
      { fixedHours: [10] },
      [],
      {},
      {
        parts: [built('lever', { print: printed(2, 0.5) }), built('ring', { print: printed(5, 0.25) })],
        demand: [order('lever', 1, 4), order('ring', 2, 2)],
      },
    );
    const ends = (play(testLab).trace ?? []).filter((entry) => entry.what === 'step ends');
    // 5 h, and 4 × 0.5 h + 2 × 0.25 h.
    expect(ends.map((entry) => clock(entry.time))).toEqual(['mon 17:30', 'mon 17:30']);
  });
});

describe('A station', () => {
  const washing = (
    group: Partial<StationGroup>,
    demand: readonly DemandStream[],
    more: Partial<Lab> = {},
  ): Lab =>
    lab({
      people: [people('technicians', 1, ['all'])],
      stations: [station('washers', group)],
      parts: [
        part('lever', [stationStage('wash', 'washers', constant(1))]),
        part('ring', [stationStage('wash', 'washers', constant(1))]),
        part('cover', [stationStage('rinse', 'washers', constant(1))]),
      ],
      demand,
      ...more,
    });

  it('takes loads of equal stages together in rank order, counted in parts, misfits skipped and nothing split', () => {
    const demand = [order('lever', 1, 2), order('ring', 2, 4), order('ring', 3, 3), order('cover', 3, 1)];
    const testLab = washing({ capacity: 5, unit: 'parts', fullShare: 1 }, demand);
    // At 02:00 six wait for five places: full, because the next does not fit; then four and three wait.
    expect(contents(play(testLab), 'wash', 'run')).toEqual([
      'mon 02:00 on washers 1: 2 of job 0',
      'mon 03:00 on washers 1: 4 of job 1',
    ]);
    const atOnce = washing({ capacity: 5, unit: 'parts', waitedHours: 3, fullShare: 1 }, [
      order('lever', 1, 2),
      order('ring', 1, 4),
      order('ring', 1, 3),
      order('cover', 1, 1),
    ]);
    expect(contents(play(atOnce), 'wash', 'run')).toEqual([
      'mon 01:00 on washers 1: 2 of job 0, 3 of job 2',
      'mon 04:00 on washers 1: 4 of job 1',
    ]);
    expect(contents(play(atOnce), 'rinse', 'run')).toEqual(['mon 05:00 on washers 1: 1 of job 3']);
  });

  it('counts its places in jobs where it says so', () => {
    const demand = [order('lever', 1, 20), order('ring', 2, 30), order('ring', 2.5, 1)];
    expect(
      contents(
        play(washing({ capacity: 2, unit: 'jobs', fullShare: 1, waitedHours: 9 }, demand)),
        'wash',
        'run',
      ),
    ).toEqual(['mon 02:00 on washers 1: 20 of job 0, 30 of job 1', 'mon 11:30 on washers 1: 1 of job 2']);
  });

  it('counts a whole build as one where it counts in builds, and so a load of a single job', () => {
    const route = (name: string) =>
      part(
        name,
        [
          buildStage('build', 'printers', { move: 'per build' }),
          stationStage('wash', 'washers', constant(1), { level: 'build' }),
        ],
        { print: printed(1) },
      );
    const testLab = washing({ capacity: 2, unit: 'builds', fullShare: 1 }, [], {
      machines: [machine('printers', { count: 2, capacity: 4, launch: { ...NEVER, fixedHours: [10] } })],
      parts: [route('lever'), part('ring', [stationStage('wash', 'washers', constant(1))])],
      demand: [order('lever', 1, 2), order('lever', 2, 2), order('lever', 3, 3)],
    });
    expect(contents(play(testLab), 'wash', 'run')).toEqual([
      'mon 11:00 on washers 1: 2 of job 0, 2 of job 1, 3 of job 2',
    ]);
    const single = washing({ capacity: 2, unit: 'builds', fullShare: 1 }, [
      order('lever', 1, 9),
      order('ring', 2, 9),
    ]);
    expect(contents(play(single), 'wash', 'run')).toEqual(['mon 02:00 on washers 1: 9 of job 0, 9 of job 1']);
  });

  it('treats a job that is larger than itself in several batches; the rest keeps its place in the queue', () => {
    const demand = [order('lever', 1, 9), order('ring', 1, 1)];
    const history = play(washing({ capacity: 5, unit: 'parts', fullShare: 1 }, demand));
    expect(contents(history, 'wash', 'run')).toEqual([
      'mon 01:00 on washers 1: 5 of job 0',
      'mon 02:00 on washers 1: 4 of job 0, 1 of job 1',
    ]);
    expect(finished(history)).toEqual(['mon 03:00 job 0', 'mon 03:00 job 1']);
  });

  it('judges whether an attended batch fits the shift by as many pieces as it holds', () => {
    const runAttendance = { skill: 'all', persons: 1, pausable: false };
    // Half an hour a piece: nine pieces do not fit a shift of four hours, but two at a time do.
    const stages = [stationStage('wash', 'washers', constant(0.5), { runAttendance, basis: 'part' })];
    const history = play(
      washing({ capacity: 2, unit: 'parts' }, [order('lever', 1, 9)], {
        people: [people('technicians', 1, ['all'], { calendar: 'short' })],
        calendars: [{ name: 'short', weekly: [{ fromHour: 8, toHour: 12 }], closedDays: [], extra: [] }],
        labCalendar: 'short',
        parts: [part('lever', stages)],
      }),
    );
    expect(contents(history, 'wash', 'run')).toEqual([
      'mon 08:00 on washers 1: 2 of job 0',
      'mon 09:00 on washers 1: 2 of job 0',
      'mon 10:00 on washers 1: 2 of job 0',
      'mon 11:00 on washers 1: 2 of job 0',
      'week 2 mon 08:00 on washers 1: 1 of job 0',
    ]);
  });

  it('counts the boxes of the parts where it is filled by volume', () => {
    const lever = shapedPart('lever', block(50, 50, 36), PLATFORM, {
      stages: [buildStage('build', 'printers'), stationStage('wash', 'washers', constant(1))],
    });
    const history = play(
      printing({ fullShare: 0 }, [], shapedGroup(), {
        parts: [lever],
        demand: [order('lever', 1, 4)],
        // Three boxes of 50 x 50 x 36 mm3.
        stations: [station('washers', { capacity: 270_000, unit: 'box volume' })],
      }),
    );
    expect(contents(history, 'wash', 'run')).toEqual([
      'mon 02:00 on washers 1: 3 of job 0',
      'mon 03:00 on washers 1: 1 of job 0',
    ]);
  });

  it('is full to the last mm3 whatever rounding does to millions of them', () => {
    const lever = shapedPart('lever', block(62.7, 91.3, 97.7), PLATFORM, {
      stages: [buildStage('build', 'printers'), stationStage('wash', 'washers', constant(1))],
    });
    const history = play(
      printing({ fullShare: 0 }, [], shapedGroup(), {
        parts: [lever],
        demand: [order('lever', 1, 13)],
        // Thirteen boxes of 62.7 x 91.3 x 97.7 mm3; the product of the doubles is 2e-9 mm3 larger.
        stations: [station('washers', { capacity: 7_270_700.151, unit: 'box volume' })],
      }),
    );
    expect(contents(history, 'wash', 'run')).toEqual([expect.stringMatching(/: 13 of job 0$/)]);
  });

  it('starts when the first-ranked load has waited long enough', () => {
    const demand = [order('lever', 1, 1), order('ring', 3, 1)];
    expect(
      contents(
        play(washing({ capacity: 5, unit: 'parts', fullShare: 1, waitedHours: 4 }, demand)),
        'wash',
        'run',
      ),
    ).toEqual(['mon 05:00 on washers 1: 1 of job 0, 1 of job 1']);
  });

  it('is fixed in content when its loading starts', () => {
    const loaded = [stationStage('wash', 'washers', constant(1), { load: attended('all', 0.5) })];
    const testLab = washing(
      { capacity: 5, unit: 'parts' },
      [order('lever', 1, 1), order('lever', 7, 1), order('lever', at('mon', '08:15'), 1)],
      {
        parts: [part('lever', loaded)],
      },
    );
    expect(contents(play(testLab), 'wash', 'load')).toEqual([
      'mon 08:00 on washers 1: 1 of job 0, 1 of job 1',
      'mon 09:30 on washers 1: 1 of job 2',
    ]);
  });

  it('is fixed in content when the person starts a run that has no loading', () => {
    const runAttendance = { skill: 'all', persons: 1, pausable: false };
    const testLab = washing(
      { capacity: 5, unit: 'parts' },
      [order('lever', 1, 1), order('lever', 7, 1), order('lever', 8.5, 1)],
      {
        parts: [part('lever', [stationStage('wash', 'washers', constant(1), { runAttendance })])],
      },
    );
    expect(contents(play(testLab), 'wash', 'run')).toEqual([
      'mon 08:00 on washers 1: 1 of job 0, 1 of job 1',
      'mon 09:00 on washers 1: 1 of job 2',
    ]);
  });

  it('reports its fill as the share of its places that are taken', () => {
    const history = play(
      washing({ capacity: 4, unit: 'parts' }, [order('lever', 1, 3), order('lever', 5, 9)]),
    );
    expect(history.stations[0]).toMatchObject({ runs: 4, pieces: 12, fillSum: 3 });
    expect(begun(history, 'wash')).toHaveLength(4);
  });
});
