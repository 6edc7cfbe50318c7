import type { Estimate } from '@buildweek/results';
import { describe, expect, it } from 'vitest';
import { datedTrace } from './dated-trace.ts';
import { jobsInLab, meanLeadTime, stationShare } from './measures.ts';
import { type Played, play } from './play.ts';

/** A value that comes out alike in every replication. */
function exactly(value: number): Estimate {
  const near: unknown = expect.closeTo(value, 9);
  return expect.objectContaining({ kind: 'estimate', value: near, low: near, high: near }) as Estimate;
}

/** Hours of attended work for each job. */
function attendedHours({ results }: Played): number {
  const steps = results.hours[0]?.steps ?? [];
  return steps.filter((step) => step.attended).reduce((sum, step) => sum + step.work.value, 0);
}

const SIMULATE = 'simulate: { weeks: 2, ignored weeks: 0, replications: 20, seed: to the minute }';

/** C01 and C02. @param request when the job arrives @param mayPause whether attended work may pause */
function weekend(request: string, mayPause: 'yes' | 'no'): string {
  return `
buildweek: 1
name: one job through a weekend
starts: 2025-01-06
${SIMULATE}
people:
  technician: { hours: { mon-fri: 08:00-16:00 }, skills: lab work }
machines:
  printer:
    by: lab work
    set-up: { takes: 30 min, may pause: ${mayPause} }
    warm-up: 15 min
    cool-down: 60 min
    unload: { takes: 15 min, may pause: ${mayPause} }
routes:
  printed part:
    - prepare: { by: lab work, takes: 60 min, may pause: ${mayPause} }
    - build: { on: printer }
    - remove supports: { by: lab work, takes: 90 min, may pause: ${mayPause} }
    - inspect: { by: lab work, takes: 15 min, may pause: ${mayPause} }
parts:
  bracket: { route: printed part, fits: 1 per build, print: 20 h per build }
demand:
  bracket: { dates: [${request}] }
`;
}

/** One piece of attended work that is ready at a known moment. */
function oneTask(start: string, hours: string, ready: string, work: string): string {
  return `
buildweek: 1
name: one task
starts: ${start}
${SIMULATE}
hours:
${hours}
people:
  technician: { hours: shift, skills: lab work }
routes:
  task:
    - work: { by: lab work, ${work} }
parts:
  job: { route: task }
demand:
  job: { dates: [${ready}] }
`;
}

// All cases of this file are hand computed and hand-checked.
describe('Timelines that were computed by hand, from scenario to results', () => {
  it('C01: one job through a weekend, its set-up fits exactly before the end of the shift', async () => {
    const text = weekend('2025-01-10 14:30', 'no');
    expect(datedTrace(text)).toEqual([
      'prepare, work: Fri 2025-01-10 14:30 -> Fri 2025-01-10 15:30',
      'build, set-up: Fri 2025-01-10 15:30 -> Fri 2025-01-10 16:00',
      'build, warm-up: Fri 2025-01-10 16:00 -> Fri 2025-01-10 16:15',
      'build, print: Fri 2025-01-10 16:15 -> Sat 2025-01-11 12:15',
      'build, cool-down: Sat 2025-01-11 12:15 -> Sat 2025-01-11 13:15',
      'build, unload: Mon 2025-01-13 08:00 -> Mon 2025-01-13 08:15',
      'remove supports, work: Mon 2025-01-13 08:15 -> Mon 2025-01-13 09:45',
      'inspect, work: Mon 2025-01-13 09:45 -> Mon 2025-01-13 10:00',
    ]);
    const played = await play(text);
    expect(meanLeadTime(played)).toEqual(exactly(67.5));
    expect(attendedHours(played) * 60).toBeCloseTo(210, 9);
  });

  it('C02: one minute later, work that must fit waits for Monday', async () => {
    const text = weekend('2025-01-10 14:31', 'no');
    const trace = datedTrace(text);
    expect(trace).toContain('build, set-up: Mon 2025-01-13 08:00 -> Mon 2025-01-13 08:30');
    expect(trace).toContain('build, print: Mon 2025-01-13 08:45 -> Tue 2025-01-14 04:45');
    expect(trace.at(-1)).toBe('inspect, work: Tue 2025-01-14 09:45 -> Tue 2025-01-14 10:00');
    expect(meanLeadTime(await play(text))).toEqual(exactly(91 + 29 / 60));
  });

  it('C02: one minute later, work that may pause leaves a minute for Monday', async () => {
    const text = weekend('2025-01-10 14:31', 'yes');
    const trace = datedTrace(text);
    expect(trace).toContain('build, set-up: Fri 2025-01-10 15:31 -> Mon 2025-01-13 08:01');
    expect(trace).toContain('build, print: Mon 2025-01-13 08:16 -> Tue 2025-01-14 04:16');
    expect(trace.at(-1)).toBe('inspect, work: Tue 2025-01-14 09:45 -> Tue 2025-01-14 10:00');
    expect(meanLeadTime(await play(text))).toEqual(exactly(91 + 29 / 60));
  });

  it.each([
    ['yes', 'work, work: Mon 2025-01-06 11:30 -> Mon 2025-01-06 13:00', 1.5],
    ['no', 'work, work: Mon 2025-01-06 12:30 -> Mon 2025-01-06 13:30', 2],
  ])('C03: an hour of work around the lunch break, may pause: %s', async (mayPause, line, leadTime) => {
    const hours = '  shift: { mon-fri: 08:00-12:00 12:30-16:30 }';
    const text = oneTask('2025-01-06', hours, '2025-01-06 11:30', `takes: 60 min, may pause: ${mayPause}`);
    expect(datedTrace(text)).toEqual([line]);
    expect(meanLeadTime(await play(text))).toEqual(exactly(leadTime));
  });

  it('C04: ten hours of work over night shifts with a weekend between them', async () => {
    const hours = '  shift: { mon-fri: 22:00-06:00 }';
    const text = oneTask('2025-01-06', hours, '2025-01-10 23:00', 'takes: 10 h, may pause: yes');
    expect(datedTrace(text)).toEqual(['work, work: Fri 2025-01-10 23:00 -> Tue 2025-01-14 01:00']);
    // 7 h until Saturday 06:00, 64 h without a shift, 3 h from Monday 22:00 on.
    expect(meanLeadTime(await play(text))).toEqual(exactly(74));
  });

  it('C05: two hours of work with a weekend and a public holiday between them', async () => {
    const hours = '  shift: { mon-fri: 08:00-16:00 }\n  closed: [2025-01-06]';
    const text = oneTask('2024-12-30', hours, '2025-01-03 15:00', 'takes: 2 h, may pause: yes');
    expect(datedTrace(text)).toEqual(['work, work: Fri 2025-01-03 15:00 -> Tue 2025-01-07 09:00']);
    expect(meanLeadTime(await play(text))).toEqual(exactly(90));
  });

  it("Q37: Little's law on a fixed path (Little 1961; hand computed)", async () => {
    const text = `
buildweek: 1
name: fixed path
starts: 2025-01-06
simulate: { weeks: 1, ignored weeks: 0, replications: 20, seed: fixed path }
stations:
  server: {}
routes:
  visit:
    - serve: { on: server, takes: 1 h per part }
parts:
  customer: { route: visit }
demand:
  customer:
    dates: # a customer of two pieces is served for two hours
      - { at: 2025-01-06 00:00, pieces: 2 }
      - { at: 2025-01-06 01:00, pieces: 1 }
      - { at: 2025-01-06 02:00, pieces: 3 }
      - { at: 2025-01-06 06:00, pieces: 1 }
      - { at: 2025-01-06 07:00, pieces: 2 }
`;
    const ends = datedTrace(text).map((line) => line.slice(-5));
    expect(ends).toEqual(['02:00', '03:00', '06:00', '07:00', '09:00']);
    const played = await play(text);
    const [customers] = played.results.jobs;
    expect(customers?.jobs).toBe(5 * 20);
    expect(meanLeadTime(played)).toEqual(exactly(2.2));
    // Times in the lab are 2, 2, 4, 1 and 2 h; nine of ten are within 4 h, half of them within 2 h.
    expect(customers?.percentiles[0]?.longRun).toEqual(exactly(2));
    expect(customers?.percentiles[2]?.longRun).toEqual(exactly(4));
    // The area under the number in the lab is 11 h, whether it is spread over the week or over its first 12 h.
    expect(jobsInLab(played)).toEqual(exactly(11 / 168));
    const lab = played.results.queues.find((queue) => queue.kind === 'all');
    const firstHours = lab?.byHourOfWeek.value.slice(0, 12) ?? [];
    const average = firstHours.reduce((sum, value) => sum + value, 0) / 12;
    expect(average).toBeCloseTo(0.9166666667, 9);
    expect((5 / 12) * (meanLeadTime(played).value ?? 0)).toBeCloseTo(average, 9);
    expect(stationShare('server', 'run')(played).value * 168).toBeCloseTo(0.75 * 12, 9);
  });
});
