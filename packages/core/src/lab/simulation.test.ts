import { STATION_STATES } from '@buildweek/results';
import { describe, expect, it } from 'vitest';
import {
  at,
  attended,
  buildStage,
  constant,
  dated,
  HOUR,
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
import { finished } from '../fixture/timeline.ts';

/** C01 and C02: one part through a weekend; request on Friday, plan from Monday 2025-01-06. */
function weekendLab(requestedAt: string, pausable: boolean) {
  return lab({
    people: [people('technicians', 1, ['all'])],
    machines: [
      machine('printers', {
        setUp: attended('all', 0.5, { pausable }),
        warmUp: { distribution: { kind: 'constant', value: 0.25 }, typicalHours: 0.25 },
        coolDown: {
          duration: { distribution: { kind: 'constant', value: 1 }, typicalHours: 1 },
          where: 'machine',
        },
        unload: attended('all', 0.25, { pausable }),
      }),
    ],
    parts: [
      part(
        'lever',
        [
          workStage('prepare file', attended('all', 1, { pausable })),
          buildStage('build', 'printers'),
          workStage('remove supports', attended('all', 1.5, { pausable })),
          workStage('inspect', attended('all', 0.25, { pausable })),
        ],
        { print: printed(20) },
      ),
    ],
    demand: [dated('lever', [at('fri', requestedAt)])],
  });
}

describe('Simulation', () => {
  it('carries one part through a weekend to the minute (case C01, hand computed)', () => {
    const history = play(weekendLab('14:30', false));
    expect(lines(history)).toEqual([
      'fri 14:30 job arrives job 0',
      'fri 14:30 step starts job 0 prepare file by technicians 1',
      'fri 15:30 step ends job 0 prepare file by technicians 1',
      'fri 15:30 step starts job 0 build set-up on printers 1 by technicians 1',
      'fri 16:00 step ends job 0 build set-up on printers 1 by technicians 1',
      'fri 16:00 step starts job 0 build warm-up on printers 1',
      'fri 16:15 step ends job 0 build warm-up on printers 1',
      'fri 16:15 step starts job 0 build print on printers 1',
      'sat 12:15 step ends job 0 build print on printers 1',
      'sat 12:15 step starts job 0 build cool-down on printers 1',
      'sat 13:15 step ends job 0 build cool-down on printers 1',
      'week 2 mon 08:00 step starts job 0 build unload on printers 1 by technicians 1',
      'week 2 mon 08:15 step ends job 0 build unload on printers 1 by technicians 1',
      'week 2 mon 08:15 step starts job 0 remove supports by technicians 1',
      'week 2 mon 09:45 step ends job 0 remove supports by technicians 1',
      'week 2 mon 09:45 step starts job 0 inspect by technicians 1',
      'week 2 mon 10:00 step ends job 0 inspect by technicians 1',
      'week 2 mon 10:00 job ends job 0',
    ]);
    expect([...(history.jobClasses[0]?.leadTimes ?? [])]).toEqual([67.5 * 3_600_000]);
  });

  it('lets a set-up that misses the end of the shift by a minute wait for Monday (case C02, must fit)', () => {
    const trace = lines(play(weekendLab('14:31', false)));
    expect(trace).toContain('week 2 mon 08:00 step starts job 0 build set-up on printers 1 by technicians 1');
    expect(trace).toContain('week 2 tue 04:45 step ends job 0 build print on printers 1');
    expect(trace.at(-1)).toBe('week 2 tue 10:00 job ends job 0');
  });

  it('lets a set-up that may pause go on where it stopped (case C02, pause at the end of the shift)', () => {
    const trace = lines(play(weekendLab('14:31', true)));
    expect(trace).toContain('fri 15:31 step starts job 0 build set-up on printers 1 by technicians 1');
    expect(trace).toContain('fri 16:00 step pauses job 0 build set-up on printers 1 by technicians 1');
    expect(trace).toContain('week 2 mon 08:01 step ends job 0 build set-up on printers 1 by technicians 1');
    expect(trace).toContain('week 2 tue 04:16 step ends job 0 build print on printers 1');
    expect(trace.at(-1)).toBe('week 2 tue 10:00 job ends job 0');
  });
});

describe('A history', () => {
  it("obeys Little's law on a fixed sample path (case Q37, hand computed; J. D. C. Little, 1961)", () => {
    const arrivals = [0, 1, 2, 6, 7];
    const services = [2, 1, 3, 1, 2];
    const history = play(
      lab({
        stations: [station('server')],
        parts: services.map((hours, job) =>
          part(`job ${job}`, [stationStage('serve', 'server', constant(hours))]),
        ),
        demand: arrivals.map((hour, job) => dated(`job ${job}`, [hour])),
      }),
      { weeks: 1 },
    );
    expect(finished(history)).toEqual([
      'mon 02:00 job 0',
      'mon 03:00 job 1',
      'mon 06:00 job 2',
      'mon 07:00 job 3',
      'mon 09:00 job 4',
    ]);
    const sojourns = history.jobClasses.flatMap((jobClass) =>
      [...jobClass.leadTimes].map((time) => time / HOUR),
    );
    expect(sojourns).toEqual([2, 2, 4, 1, 2]);
    // Nothing happens between 12:00, where the case ends, and the end of the week.
    expect(history.laws.jobArea).toBe(11 * HOUR);
    expect(history.laws.jobStays).toBe(11 * HOUR);
    const run = history.stations[0]?.timeInState[STATION_STATES.indexOf('run')] ?? Number.NaN;
    expect(run / (12 * HOUR)).toBe(0.75);
  });

  it('follows the law of lead times over calendar and print (case Q40, closed form)', () => {
    // One job in the middle of every five minutes of a week: means of what is linear in between are exact.
    const step = 5 / 60;
    const arrivals = Array.from({ length: 7 * 288 }, (_, index) => (index + 0.5) * step);
    const everyDay = [0, 1, 2, 3, 4, 5, 6].map((day) => ({ fromHour: day * 24 + 8, toHour: day * 24 + 16 }));
    const history = play(
      lab({
        calendars: [{ name: 'day', weekly: everyDay, closedDays: [], extra: [] }],
        people: [people('technicians', 1, ['all'])],
        machines: [
          machine('printers', { count: 700, setUp: attended('all', 0), unload: attended('all', 0) }),
        ],
        parts: [part('lever', [buildStage('build', 'printers')], { print: printed(20) })],
        demand: [dated('lever', arrivals)],
      }),
      { weeks: 1, trace: false },
    );
    const leadTimes = [...(history.jobClasses[0]?.leadTimes ?? [])].map((time) => time / HOUR);
    const jobs = leadTimes.length;
    expect(jobs).toBe(2016);
    const share = (most: number): number => leadTimes.filter((time) => time <= most).length / jobs;
    expect(leadTimes.reduce((sum, time) => sum + time, 0) / jobs).toBeCloseTo(28 + 1 / 3, 9);
    expect(share(20)).toBeCloseTo(1 / 6, 12);
    expect(share(24)).toBeCloseTo(1 / 3, 12);
    // The quantiles lie within half a step of 28, 37.6 and 38.8 h; nobody takes 40.
    for (const [quantile, hours] of [
      [0.5, 28],
      [0.9, 37.6],
      [0.95, 38.8],
      [1, 40],
    ] as const) {
      expect(Math.abs((leadTimes[Math.ceil(quantile * jobs) - 1] ?? 0) - hours)).toBeLessThan(step);
    }
    const [hours] = history.partHours;
    const waited = (stepName: string): number => {
      const position = hours?.steps.findIndex((candidate) => candidate.phase === stepName) ?? -1;
      const causes = (hours?.waits.length ?? 0) / (hours?.steps.length ?? 1);
      const waits = hours?.waits.slice(position * causes, (position + 1) * causes) ?? [];
      return waits.reduce((sum, wait) => sum + wait / HOUR, 0) / jobs;
    };
    expect(waited('set-up')).toBeCloseTo(16 / 3, 9);
    expect(waited('unload')).toBeCloseTo(3, 9);
  });
});

describe('The cohort', () => {
  /** Jobs that stand for so many hours, one at each of these hours. */
  const waiting = (hours: number, arrivals: readonly number[]) =>
    lab({ parts: [part('lever', [waitStage('dry', hours)])], demand: [dated('lever', arrivals)] });

  it('is the jobs that arrive in the measured weeks, neither before nor after, its start included, its end not', () => {
    const history = play(waiting(1, [167, 168, 200, 335, 336, 400]), { ignoredWeeks: 1, weeks: 1 });
    expect(history.jobClasses[0]).toMatchObject({ arrived: 3, unfinished: 0 });
    expect([...history.weeks.arrivedJobs]).toEqual([3]);
    // What is finished in the week: the jobs that came at 167 and at 168 and 200; that of 335 ends at 336.
    expect([...history.weeks.finishedJobs]).toEqual([3]);
  });

  it('is waited for while jobs go on arriving, and no longer', () => {
    const history = play(waiting(30, [160, 180, 190, 250]), { weeks: 1, capWeeks: 4 });
    expect(history.endedAt).toBe(190 * HOUR);
    expect(finished(history)).toEqual(['week 2 mon 22:00 job 0']);
    expect((history.trace ?? []).filter((entry) => entry.what === 'job arrives')).toHaveLength(3);
  });

  it('ends the replication with the measured weeks when it is finished by then', () => {
    expect(play(waiting(1, [100, 200]), { weeks: 1, capWeeks: 4 }).endedAt).toBe(168 * HOUR);
  });

  it('is waited for until the cap; who is unfinished then is counted and has no lead time', () => {
    const history = play(waiting(400, [10, 160]), { weeks: 1, capWeeks: 2 });
    expect(history.endedAt).toBe(3 * 168 * HOUR);
    expect(history.jobClasses[0]).toMatchObject({ arrived: 2, unfinished: 1 });
    expect([...(history.jobClasses[0]?.leadTimes ?? [])]).toEqual([400 * HOUR]);
    // Both are in the lab to the end of the measured week.
    expect(history.laws.jobArea).toBe((158 + 8) * HOUR);
  });

  it('finishes at the cap what ends at that very moment', () => {
    expect(play(waiting(168 + 8, [160]), { weeks: 1, capWeeks: 1 }).jobClasses[0]?.unfinished).toBe(0);
  });
});
