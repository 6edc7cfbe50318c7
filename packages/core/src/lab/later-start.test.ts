import type { InitialJob, Lab } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import {
  at,
  attended,
  buildStage,
  dated,
  HOUR,
  lab,
  lines,
  machine,
  part,
  people,
  play,
  printed,
  stream,
  workStage,
} from '../fixture/lab.ts';
import { hashHistory } from '../observe/hash.ts';
import { checkLaws } from '../observe/laws.ts';

const LEVER = part(
  'lever',
  [
    workStage('prepare file', attended('all', 1)),
    buildStage('build', 'printers'),
    workStage('sand', attended('all', 4, { pausable: true })),
  ],
  { print: printed(3) },
);

const OFTEN = stream('lever', {
  arrivals: {
    kind: 'poisson',
    perWeek: 6,
    profile: null,
    growthPerMonth: 0,
    jobsPerArrival: { kind: 'fixed', value: 1 },
  },
});

/** One technician from 8 to 16, one printer; the state holds from Wednesday at 09:30. */
function startingLate(jobs: readonly Partial<InitialJob>[], more: Partial<Lab> = {}): Lab {
  return lab({
    people: [people('technicians', 1, ['all'])],
    machines: [machine('printers', { unload: attended('all', 0.5) })],
    parts: [LEVER],
    demand: [
      dated(
        'lever',
        [at('mon', '09:00') / HOUR, at('wed', '12:00') / HOUR].map((hour) => hour * HOUR),
      ),
    ],
    initialState: {
      atHour: 57.5,
      jobs: jobs.map((job) => ({
        stream: 'lever',
        quantity: 1,
        rush: false,
        arrivedAtHour: 33,
        dueAtHour: null,
        stage: 'sand',
        remainingHours: null,
        ...job,
      })),
      machines: [],
    },
    ...more,
  });
}

describe('A lab that starts in the middle of a week', () => {
  it('goes on from its state at that moment, with the people who are there then', () => {
    const history = play(startingLate([{ stage: 'sand' }]));
    const told = lines(history, ({ what }) => what !== 'on duty' && what !== 'off duty');
    // Sanding begins at once, pauses for nothing, and the job of Wednesday noon comes while it goes on.
    expect(told.slice(0, 5)).toEqual([
      'wed 09:30 job arrives job 0',
      'wed 09:30 step starts job 0 sand by technicians 1',
      'wed 12:00 job arrives job 1',
      'wed 13:30 step ends job 0 sand by technicians 1',
      'wed 13:30 job ends job 0',
    ]);
  });

  it('leaves out what came before, and keeps the draws of what comes after in step', () => {
    const demand = [OFTEN];
    const late = play(startingLate([], { demand }));
    const early = play(startingLate([], { demand, initialState: { jobs: [], machines: [] } }));
    const arrivals = (history: typeof late): number[] =>
      (history.trace ?? []).filter(({ what }) => what === 'job arrives').map(({ time }) => time);
    const start = 57.5 * HOUR;
    expect(arrivals(late)[0]).toBeGreaterThanOrEqual(start);
    const both = Math.min(...[late, early].map(({ endedAt }) => endedAt));
    expect(arrivals(late).filter((time) => time < both)).toEqual(
      arrivals(early).filter((time) => time >= start && time < both),
    );
  });

  it('measures whole weeks from then on, and its laws hold', () => {
    const history = play(startingLate([{ stage: 'sand' }, { stage: 'build' }], { demand: [OFTEN] }));
    expect(history.windowStart).toBe(57.5 * HOUR);
    expect((history.windowEnd - history.windowStart) % (168 * HOUR)).toBe(0);
    expect(checkLaws(history).filter(({ holds }) => !holds)).toEqual([]);
  });

  it('does nothing before it', () => {
    const history = play(
      startingLate([{ stage: 'sand' }], {
        machines: [
          machine('printers', {
            unload: attended('all', 0.5),
          }),
        ],
      }),
    );
    const before = (history.trace ?? []).filter(({ time }) => time < 57.5 * HOUR);
    expect(new Set(before.map(({ what }) => what))).toEqual(new Set(['on duty', 'off duty']));
  });

  it('is the same as a start on Monday when that is its hour', () => {
    const start = { jobs: [], machines: [] };
    const demand = [OFTEN];
    const plain = play(startingLate([], { demand, initialState: start }));
    const zero = play(startingLate([], { demand, initialState: { ...start, atHour: 0 } }));
    expect(hashHistory(zero)).toBe(hashHistory(plain));
  });
});
