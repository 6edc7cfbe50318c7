import type { SendOutRule } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import {
  attended,
  buildStage,
  constant,
  dated,
  exponential,
  lab,
  machine,
  part,
  people,
  play,
  printed,
  stream,
  waitStage,
  workStage,
} from '../fixture/lab.ts';
import { hashHistory } from '../observe/hash.ts';

describe('Two labs on the same seed', () => {
  const busy = (sentOut: SendOutRule | null, count = 1) =>
    lab({
      people: [people('technicians', 1, ['all'], { calendar: 'always' })],
      machines: [machine('printers', { count })],
      parts: [
        part(
          'lever',
          [
            buildStage('build', 'printers'),
            workStage('sand', attended('all', 1, { duration: exponential(1) })),
          ],
          { print: printed(9) },
        ),
        part('ring', [waitStage('dry', 1, { duration: exponential(5) })]),
      ],
      demand: [
        stream('lever', {
          arrivals: {
            kind: 'poisson',
            perWeek: 40,
            profile: null,
            growthPerMonth: 0,
            jobsPerArrival: { kind: 'fixed', value: 1 },
          },
          due: { kind: 'clock', hours: 2000 },
          changes: {
            cancels: null,
            revises: { chance: 0.6, after: { kind: 'exponential', mean: 20 }, onlyBeforeStart: true },
          },
          sentOut,
        }),
        dated('ring', [1, 2, 3]),
      ],
    });

  it('leave the same record when a rule for sending out never holds', () => {
    const never = {
      always: false,
      waitingJobsAbove: 10_000,
      promiseAtRisk: true,
      leadTime: { kind: 'clock', duration: constant(30) },
    } as const;
    expect(hashHistory(play(busy(never)))).toBe(hashHistory(play(busy(null))));
  });

  it('see the same arrivals and the same work of every job that is not revised, whichever jobs are revised', () => {
    const worked = (count: number) => {
      const entries = play(busy(null, count)).trace ?? [];
      const revised = new Set(entries.filter(({ what }) => what === 'job is revised').map(({ job }) => job));
      const arrivals = entries.filter(({ what }) => what === 'job arrives').map(({ time }) => time);
      const hours = new Map<number, number>();
      for (const { what, job, stage, time } of entries) {
        if (stage !== 'sand' || revised.has(job)) continue;
        if (what === 'step starts') hours.set(job, -time);
        if (what === 'step ends') hours.set(job, (hours.get(job) ?? 0) + time);
      }
      return { revised, arrivals, hours };
    };
    const few = worked(1);
    const many = worked(3);
    expect([...few.revised].filter((job) => !many.revised.has(job)).length).toBeGreaterThan(5);
    expect(many.arrivals.slice(0, 30)).toEqual(few.arrivals.slice(0, 30));
    const done = [...few.hours].filter(([job, hours]) => hours > 0 && (many.hours.get(job) ?? 0) > 0);
    expect(done.length).toBeGreaterThan(5);
    for (const [job, hours] of done) expect([job, many.hours.get(job)]).toEqual([job, hours]);
  });
});
