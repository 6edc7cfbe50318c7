import type { MachineState } from '@buildweek/results';
import { describe, expect, it } from 'vitest';
import { type Played, play } from './play.ts';

/** Minutes of the only machine in some states, in a plan of one week. */
function minutesIn({ results }: Played, ...states: readonly MachineState[]): number {
  const [machine] = results.machines;
  const shares = machine?.states.filter(({ state }) => states.includes(state)) ?? [];
  return shares.reduce((sum, { share }) => sum + share.value, 0) * 168 * 60;
}

/** Minutes of the only person, in a plan of one week. */
function personMinutes({ results }: Played, ...states: readonly string[]): number {
  const [people] = results.people;
  const shares = people?.states.filter(({ state }) => states.includes(state)) ?? [];
  return shares.reduce((sum, { share }) => sum + share.value, 0) * 168 * 60;
}

/**
 * One order of forty pieces in ten builds: 4 min set-up, 30 min print, 6 min unloading each; a failure after 200 min
 * of printing takes 45 min of repair. The only person works besides on ten short jobs of 6.5 min.
 */
const SHIFT = `
buildweek: 1
name: one order in one shift
starts: 2025-01-06
simulate: { weeks: 1, ignored weeks: 0, replications: 20, seed: one shift }
people:
  worker: { hours: { tue: 08:00-15:30 }, skills: [run machines, desk work] }
machines:
  printer:
    set-up: 4 min
    unload: 6 min
    breaks down: { called: fault, every: 200 min of running, build: goes on, repair: 45 min }
routes:
  order: [build: { on: printer }]
  desk: [advise: { by: desk work, takes: 6.5 min, may pause: yes }]
parts:
  piece: { route: order, fits: 4 per build, print: 30 min per build }
  question: { route: desk }
demand:
  piece: { dates: [{ at: 2025-01-06 19:25, pieces: 40 }] }
  question:
    dates:
      - 2025-01-07 08:10
      - 2025-01-07 08:50
      - 2025-01-07 09:30
      - 2025-01-07 10:10
      - 2025-01-07 10:50
      - 2025-01-07 11:30
      - 2025-01-07 12:10
      - 2025-01-07 13:35
      - 2025-01-07 14:15
      - 2025-01-07 14:55
`;

/** Eight builds of ten hours from Monday on, with two failures, one maintenance and one test print. */
const WEEK = `
buildweek: 1
name: one week of a machine
starts: 2025-01-06
simulate: { weeks: 1, ignored weeks: 0, replications: 20, seed: one week }
hours:
  manned: { mon-fri: 00:00-24:00 }
machines:
  machine:
    available: manned
    noticed: monitored
    breaks down:
      every: 39 h of running
      build: goes on
      service: { response: 0 min, takes: 3 h }
    maintenance: { every: 50 h of running, takes: 8 h, attended: no }
    test prints: { every: 100 h by the clock, takes: 4 h }
routes:
  process: [build: { on: machine }]
parts:
  part: { route: process, fits: 1 per build, print: 10 h per build }
demand:
  part: { dates: [{ at: 2025-01-06 00:00, pieces: 8 }] }
`;

describe('Indicators of equipment, from the states that results tell', () => {
  it('K01: ISO 22400-2 on one shift', async () => {
    // Formulas as given in a published academic ontology of the standard (verified); numbers made up (closed form).
    const played = await play(SHIFT);
    const planned = 450;
    const production = minutesIn(played, 'print');
    const setUp = minutesIn(played, 'set-up');
    const busy = minutesIn(played, 'set-up', 'print', 'unload');
    const delay = minutesIn(played, 'down');
    const [order] = played.results.jobs.filter(({ part }) => part === 'piece');
    const execution = order?.meanLeadTime.kind === 'estimate' ? order.meanLeadTime.value * 60 : Number.NaN;
    expect([production, setUp, busy, delay, execution].map((minutes) => Number(minutes.toFixed(6)))).toEqual([
      300, 40, 400, 45, 1200,
    ]);
    expect(production / planned).toBeCloseTo(0.6666666667, 9);
    expect(busy / planned).toBeCloseTo(0.8888888889, 9);
    expect(production / busy).toBeCloseTo(0.75, 9);
    expect(production / (production + delay)).toBeCloseTo(0.8695652174, 9);
    expect(setUp / (production + setUp)).toBeCloseTo(0.1176470588, 9);
    expect(busy / execution).toBeCloseTo(0.3333333333, 9);
    expect(production / execution).toBeCloseTo(0.25, 9);
    // Throughput rate: 40 pieces over the execution time of the order, in pieces per hour.
    const pieces = played.results.machines[0]?.partsPerWeek.value ?? 0;
    expect((pieces / execution) * 60).toBeCloseTo(2, 9);
    // Effectiveness: 7 min are planned for a piece.
    expect((7 * pieces) / production).toBeCloseTo(0.9333333333, 9);
    // Worker efficiency: 210 min of work in 450 min of attendance.
    const attendance = personMinutes(played, 'idle', 'work', 'other duties', 'overtime');
    expect(attendance).toBeCloseTo(450, 6);
    expect(personMinutes(played, 'work') / attendance).toBeCloseTo(0.4666666667, 9);
  });

  it('K02: SEMI E10 time accounting of one week', async () => {
    // Six states (names verified, formulas from memory; closed form).
    const played = await play(WEEK);
    const hours = (...states: readonly MachineState[]): number => minutesIn(played, ...states) / 60;
    const productive = hours('print');
    const standby = hours('idle');
    const engineering = hours('test print');
    const scheduledDown = hours('maintenance');
    const unscheduledDown = hours('down');
    const nonScheduled = hours('off');
    const all = [productive, standby, engineering, scheduledDown, unscheduledDown, nonScheduled];
    expect(all.map((time) => Number(time.toFixed(6)))).toEqual([80, 22, 4, 8, 6, 48]);
    expect(all.reduce((sum, time) => sum + time, 0)).toBeCloseTo(168, 9);
    const operations = 168 - nonScheduled;
    const uptime = productive + standby + engineering;
    expect(operations).toBeCloseTo(120, 9);
    expect(uptime).toBeCloseTo(106, 9);
    expect((100 * uptime) / operations).toBeCloseTo(88.33333333, 7);
    expect((100 * productive) / operations).toBeCloseTo(66.66666667, 7);
    expect((100 * productive) / 168).toBeCloseTo(47.61904762, 7);
    const failures = played.histories[0]?.machines[0]?.breakdowns ?? 0;
    expect(failures).toBe(2);
    expect(productive / failures).toBeCloseTo(40, 9);
    expect(unscheduledDown / failures).toBeCloseTo(3, 9);
  });
});
