import type { DatedJob, DemandStream, DueRule, Lab } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import { sanding } from '../fixture/bench-lab.ts';
import {
  at,
  attended,
  clock,
  exponential,
  HOUR,
  lab,
  part,
  people,
  play,
  station,
  stationStage,
  stream,
  waitStage,
  workStage,
} from '../fixture/lab.ts';

/** Levers that wait an hour, promised by this rule. */
function promised(hour: number, due: DueRule, more: Partial<Lab> = {}): number {
  const testLab = lab({
    parts: [part('lever', [waitStage('dry', 0)])],
    demand: [{ ...sanding([hour], 0).demand[0], due } as DemandStream],
    ...more,
  });
  return play(testLab, { weeks: 1 }).jobClasses[0]?.promised ?? Number.NaN;
}

/** Whether a job that takes so many hours by the clock keeps its promise. */
function isOnTime(hour: number, takes: number, due: DueRule, more: Partial<Lab> = {}): boolean {
  const testLab = lab({
    parts: [part('lever', [waitStage('dry', takes)])],
    demand: [{ ...sanding([hour], 0).demand[0], due } as DemandStream],
    ...more,
  });
  return play(testLab, { weeks: 1 }).jobClasses[0]?.onTime === 1;
}

const DAYS: DueRule = { kind: 'working days', days: 2, cutOffHour: 12 };

describe('A promise', () => {
  it('counts so many hours by the clock, and the last millisecond is in time', () => {
    const due: DueRule = { kind: 'clock', hours: 5 };
    expect(isOnTime(10, 5, due)).toBe(true);
    expect(isOnTime(10, 5 + 1 / HOUR, due)).toBe(false);
  });

  it('is the closing time of the n-th working day of the lab calendar after the day of asking', () => {
    // Asked on Monday at 10:00, due on Wednesday at 16:00: 54 h.
    expect(isOnTime(at('mon', '10:00'), 54, DAYS)).toBe(true);
    expect(isOnTime(at('mon', '10:00'), 54 + 1 / 60, DAYS)).toBe(false);
  });

  it('counts from the next working day when it is asked for at or after the cut-off', () => {
    expect(isOnTime(at('mon', '11:59'), 52 + 1 / 60, DAYS)).toBe(true);
    expect(isOnTime(at('mon', '11:59'), 53, DAYS)).toBe(false);
    expect(isOnTime(at('mon', '12:00'), 76, DAYS)).toBe(true);
    expect(isOnTime(at('mon', '12:00'), 77, DAYS)).toBe(false);
  });

  it('counts working days of the lab calendar only: neither weekends nor closed days', () => {
    const weekly = [0, 1, 2, 3, 4].map((day) => ({ fromHour: day * 24 + 8, toHour: day * 24 + 16 }));
    const closed = { calendars: [{ name: 'day', weekly, closedDays: [2], extra: [] }] };
    // Asked on Monday morning: Tuesday, (Wednesday closed,) Thursday 16:00.
    expect(isOnTime(at('mon', '10:00'), 78, DAYS, closed)).toBe(true);
    expect(isOnTime(at('mon', '10:00'), 79, DAYS, closed)).toBe(false);
    // Asked on Saturday counts as asked on Monday: Wednesday 16:00 is 100 h later.
    expect(isOnTime(at('sat', '12:00'), 100, DAYS)).toBe(true);
    expect(isOnTime(at('sat', '12:00'), 101, DAYS)).toBe(false);
  });

  it('is made for no job whose rule says none', () => {
    expect(promised(10, { kind: 'none' })).toBe(0);
    expect(promised(10, DAYS)).toBe(1);
  });

  it('of rush jobs goes by a rule of their own', () => {
    const jobs: DatedJob[] = [
      { atHour: 1, quantity: 1, rush: true },
      { atHour: 1, quantity: 1, rush: false },
    ];
    const testLab = lab({
      parts: [part('lever', [waitStage('dry', 3)])],
      demand: [
        stream('lever', {
          arrivals: { kind: 'dated', jobs },
          due: { kind: 'clock', hours: 3 },
          rushDue: { kind: 'clock', hours: 2 },
        }),
      ],
    });
    const [normal, rush] = play(testLab, { weeks: 1 }).jobClasses;
    expect(normal).toMatchObject({ rush: false, promised: 1, onTime: 1 });
    expect(rush).toMatchObject({ rush: true, promised: 1, onTime: 0 });
  });

  it('that is not kept by the end is missed, finished or not', () => {
    const testLab = lab({
      parts: [part('lever', [waitStage('dry', 1000)])],
      demand: [{ ...sanding([1], 0).demand[0], due: { kind: 'clock', hours: 9 } } as DemandStream],
    });
    expect(play(testLab, { weeks: 1, capWeeks: 1 }).jobClasses[0]).toMatchObject({
      arrived: 1,
      unfinished: 1,
      promised: 1,
      onTime: 0,
    });
  });
});

/** Random jobs: arrivals, pieces, rush and two random stages, on so many sanders. */
function randomLab(sanders: number, more: Partial<DemandStream> = {}): Lab {
  return lab({
    people: [people('sanders', sanders, ['sand'])],
    stations: [station('washers', { count: 2 })],
    parts: [
      part('lever', [
        workStage(
          'sand',
          { ...attended('sand', 1), duration: exponential(1), pausable: true },
          { basis: 'part' },
        ),
        stationStage('wash', 'washers', exponential(2), { basis: 'job' }),
      ]),
    ],
    demand: [
      stream('lever', {
        arrivals: {
          kind: 'poisson',
          perWeek: 20,
          profile: null,
          growthPerMonth: 0,
          jobsPerArrival: { kind: 'uniform', low: 1, high: 3 },
        },
        quantity: { kind: 'uniform', low: 1, high: 5 },
        rushShare: 0.3,
        ...more,
      }),
    ],
  });
}

/** What each job is: its arrival, pieces, and work in the stages, by number; served or not served. */
function jobsOf(testLab: Lab): Map<number, string[]> {
  const jobs = new Map<number, string[]>();
  const begun = new Map<string, number>();
  for (const entry of play(testLab, { weeks: 4, capWeeks: 20 }).trace ?? []) {
    const lines = jobs.get(entry.job) ?? [];
    const key = `${entry.job} ${entry.stage}`;
    if (entry.what === 'job arrives') jobs.set(entry.job, [`${clock(entry.time)} ${entry.pieces}`]);
    else if (entry.what === 'step starts' || entry.what === 'step resumes')
      begun.set(key, (begun.get(key) ?? 0) - entry.time);
    else if (entry.what === 'step pauses') begun.set(key, (begun.get(key) ?? 0) + entry.time);
    else if (entry.what === 'step ends') lines.push(`${entry.stage} ${(begun.get(key) ?? 0) + entry.time}`);
  }
  return jobs;
}

describe('Demand', () => {
  it('draws all that belongs to a job when it arrives, in arrival order: two labs see the same jobs', () => {
    const few = jobsOf(randomLab(2));
    const many = jobsOf(randomLab(9));
    let compared = 0;
    for (const [number, job] of few) {
      const other = many.get(number);
      if (job.length < 3 || other === undefined || other.length < 3) continue;
      expect(job).toEqual(other);
      compared++;
    }
    expect(compared).toBeGreaterThan(50);
  });

  it('keeps one kind of number when another is no longer random', () => {
    const fixed = jobsOf(randomLab(9, { quantity: { kind: 'fixed', value: 2 } }));
    const arrivals = (jobs: Map<number, string[]>): (string | undefined)[] =>
      [...jobs.values()].map((job) => job[0]?.split(' ').slice(0, -1).join(' '));
    const random = arrivals(jobsOf(randomLab(9)));
    expect(arrivals(fixed).slice(0, 50)).toEqual(random.slice(0, 50));
  });

  it('takes from a dated list what it says and draws the rest', () => {
    const jobs: DatedJob[] = [
      { atHour: 3, quantity: 7, rush: true },
      { atHour: 1, quantity: null, rush: null },
      { atHour: 2, quantity: null, rush: false },
    ];
    const history = play(
      lab({
        parts: [part('lever', [waitStage('dry', 0)])],
        demand: [
          stream('lever', { arrivals: { kind: 'dated', jobs }, quantity: { kind: 'fixed', value: 4 } }),
        ],
      }),
      { weeks: 1 },
    );
    const arrivals = (history.trace ?? []).filter((entry) => entry.what === 'job arrives');
    expect(arrivals.map((entry) => [clock(entry.time), entry.pieces])).toEqual([
      ['mon 01:00', 4],
      ['mon 02:00', 4],
      ['mon 03:00', 7],
    ]);
    expect(history.jobClasses.map((jobClass) => jobClass.arrived)).toEqual([2, 1]);
  });

  it('takes known work in place of the draw, and leaves all other draws as they are', () => {
    const played = (workHours?: Readonly<Record<string, number>>): string[] => {
      const known = workHours === undefined ? {} : { workHours };
      const jobs: DatedJob[] = [8, 30, 60].map((hour, index) => ({
        atHour: hour,
        quantity: 2,
        rush: false,
        ...(index === 1 ? known : {}),
      }));
      const work = attended('all', 1, { duration: exponential(0.5), pausable: true });
      const { trace } = play(
        lab({
          people: [people('technicians', 1, ['all'])],
          parts: [part('lever', [workStage('sand', work, { basis: 'part' }), waitStage('dry', 0.25)])],
          demand: [stream('lever', { arrivals: { kind: 'dated', jobs } })],
        }),
        { weeks: 1 },
      );
      return (trace ?? []).filter(({ what }) => what === 'job ends').map(({ time }) => clock(time));
    };
    const drawn = played();
    // From Tuesday 08:00: an hour and a half for the whole job, and a quarter to dry.
    expect(played({ sand: 1.5, polish: 7 })).toEqual([drawn[0], 'tue 09:45', drawn[2]]);
    expect(played({})).toEqual(drawn);
  });

  it('lets the jobs of a burst arrive at one instant, numbered one after the other', () => {
    const history = play(
      lab({
        parts: [part('lever', [waitStage('dry', 0)])],
        demand: [
          stream('lever', {
            arrivals: {
              kind: 'renewal',
              gap: { kind: 'constant', value: 50 },
              jobsPerArrival: { kind: 'fixed', value: 3 },
            },
          }),
        ],
      }),
      { weeks: 1, capWeeks: 0 },
    );
    const arrivals = (history.trace ?? []).filter((entry) => entry.what === 'job arrives');
    expect(arrivals.map((entry) => `${entry.time / HOUR} ${entry.job}`)).toEqual([
      '50 0',
      '50 1',
      '50 2',
      '100 3',
      '100 4',
      '100 5',
      '150 6',
      '150 7',
      '150 8',
    ]);
  });
});
