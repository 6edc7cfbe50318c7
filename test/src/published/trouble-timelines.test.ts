import { describe, expect, it } from 'vitest';
import { datedTrace } from './dated-trace.ts';
import { meanLeadTime } from './measures.ts';
import { play } from './play.ts';

const SIMULATE = 'simulate: { weeks: 2, ignored weeks: 0, replications: 20, seed: to the minute }';

/** A print of twenty hours that starts on Monday at 16:00; the machine fails at 22:00. @param build what becomes of it */
function failureAtNight(build: 'goes on' | 'is lost'): string {
  return `
buildweek: 1
name: failure at night
starts: 2025-01-06
${SIMULATE}
people:
  technician: { hours: { mon-fri: 08:00-16:00 }, skills: lab work }
machines:
  printer:
    by: lab work
    set-up: 30 min
    unload: 15 min
    breaks down: { called: nozzle, every: 22 h by the clock, build: ${build}, repair: 2 h }
routes:
  printed part:
    - build: { on: printer }
parts:
  bracket: { route: printed part, fits: 1 per build, print: 20 h per build }
demand:
  bracket: { dates: [2025-01-06 15:30] }
`;
}

// Hand computed and hand-checked.
describe('Timelines with launch times and breakdowns, from scenario to results', () => {
  it('C10: a powder build starts at its hour with the parts that came strictly before', async () => {
    const text = `
buildweek: 1
name: powder build with a daily cut-off
starts: 2025-01-06
${SIMULATE}
hours:
  day: { mon-fri: 08:00-16:00 }
people:
  technician: { hours: day, skills: lab work }
machines:
  powder:
    by: lab work
    start: mon-fri at 15:00
    warm-up: 2 h
    cool-down: 16 h
    unload: 60 min
routes:
  powder part:
    - build: { on: powder }
    - blast: { by: lab work, takes: 30 min per build, level: build }
parts:
  clip: { route: powder part, fits: 20 per build, print: 14 h per build }
demand:
  clip: { dates: [2025-01-08 15:00, 2025-01-09 14:59] }
`;
    const steps = [
      'build, warm-up: Thu 2025-01-09 15:00 -> Thu 2025-01-09 17:00',
      'build, print: Thu 2025-01-09 17:00 -> Fri 2025-01-10 07:00',
      'build, cool-down: Fri 2025-01-10 07:00 -> Fri 2025-01-10 23:00',
      'build, unload: Mon 2025-01-13 08:00 -> Mon 2025-01-13 09:00',
      'blast, work: Mon 2025-01-13 09:00 -> Mon 2025-01-13 09:30',
    ];
    // Both parts go through every step together.
    expect(datedTrace(text)).toEqual(steps.flatMap((step) => [step, step]));
    const { value } = meanLeadTime(await play(text));
    expect(value).toBeCloseTo((114.5 + 90.51666667) / 2, 7);
  });

  it('C11: a build goes on after a repair that had to wait for the morning', async () => {
    const text = failureAtNight('goes on');
    expect(datedTrace(text).slice(0, 3)).toEqual([
      'build, set-up: Mon 2025-01-06 15:30 -> Mon 2025-01-06 16:00',
      'nozzle: Tue 2025-01-07 08:00 -> Tue 2025-01-07 10:00',
      'build, print: Tue 2025-01-07 10:00 -> Wed 2025-01-08 00:00',
    ]);
    const [printer] = (await play(text)).results.machines;
    const printing = printer?.states.find(({ state }) => state === 'print')?.share.value;
    expect((printing ?? 0) * 2 * 168).toBeCloseTo(20, 9);
  });

  it('C11: a build that is lost starts again after the repair, with a set-up', async () => {
    const text = failureAtNight('is lost');
    expect(datedTrace(text).slice(0, 4)).toEqual([
      'build, set-up: Mon 2025-01-06 15:30 -> Mon 2025-01-06 16:00',
      'nozzle: Tue 2025-01-07 08:00 -> Tue 2025-01-07 10:00',
      'build, set-up: Tue 2025-01-07 10:00 -> Tue 2025-01-07 10:30',
      'build, print: Tue 2025-01-07 10:30 -> Wed 2025-01-08 06:30',
    ]);
    const [printer] = (await play(text)).results.machines;
    const printing = printer?.states.find(({ state }) => state === 'print')?.share.value;
    expect((printing ?? 0) * 2 * 168).toBeCloseTo(6 + 20, 9);
  });
});
