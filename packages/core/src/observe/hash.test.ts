import { describe, expect, it } from 'vitest';
import { attended, dated, exponential, lab, part, people, play, stream, workStage } from '../fixture/lab.ts';
import { createSimulator } from '../simulate.ts';
import { hashHistory } from './hash.ts';
import type { History } from './history.ts';

const LAB = lab({
  people: [people('technicians', 1, ['all'])],
  parts: [part('lever', [workStage('sand', { ...attended('all', 1), duration: exponential(1) })])],
  demand: [
    stream('lever', {
      arrivals: {
        kind: 'poisson',
        perWeek: 20,
        profile: null,
        growthPerMonth: 0,
        jobsPerArrival: { kind: 'fixed', value: 1 },
      },
    }),
  ],
});

describe('hashHistory', () => {
  it('is the SHA-256 of what was written down (an empty record: tag 7 and the double 0)', () => {
    // sha256sum of the bytes 07 00 00 00 00 00 00 00 00.
    expect(hashHistory({})).toBe('7e2e8b49f93a4f1fcd3d8c53db08bcd2fb714f1d91d4db7ed0b8786c572f9164');
  });

  it('differs as soon as a single number, name or length differs', () => {
    const plain = play(LAB);
    const [first] = plain.jobClasses;
    if (first === undefined) throw new Error('The lab has a part type.');
    const variants: History[] = [
      plain,
      { ...plain, endedAt: plain.endedAt + 1 },
      { ...plain, windowEnd: -0.5 },
      { ...plain, jobClasses: [{ ...first, part: 'levers' }] },
      { ...plain, jobClasses: [{ ...first, rush: true }] },
      { ...plain, jobClasses: [{ ...first, leadTimes: first.leadTimes.slice(1) }] },
      { ...plain, queues: plain.queues.slice(1) },
      { ...plain, queues: plain.queues.map((queue) => ({ ...queue, waits: new Float64Array() })) },
    ];
    expect(new Set(variants.map(hashHistory)).size).toBe(variants.length);
  });

  it('leaves the trace out', () => {
    const traced = play(LAB, { trace: true });
    const plain = play(LAB, { trace: false });
    expect(traced.trace?.length).toBeGreaterThan(0);
    expect(plain.trace).toBeNull();
    expect(hashHistory(traced)).toBe(hashHistory(plain));
  });

  it('takes zero for the same with either sign', () => {
    expect(hashHistory({ endedAt: -0 })).toBe(hashHistory({ endedAt: 0 }));
  });

  it('refuses what no history can hold', () => {
    const odd = { ...play(LAB), endedAt: undefined } as unknown as History;
    expect(() => hashHistory(odd)).toThrow(TypeError);
  });

  it('is the same for the same seed and replication, and another for another seed or replication', () => {
    const simulator = createSimulator(LAB);
    const settings = { ignoredWeeks: 0, weeks: 4, capWeeks: 2, trace: false, queueWaits: true };
    const hash = (seed: string, replication: number): string =>
      hashHistory({ ...simulator.simulate({ ...settings, seed, replication }), replication: 0 });
    expect(hash('spring', 0)).toBe(hash('spring', 0));
    expect(hash('spring', 1)).not.toBe(hash('spring', 0));
    expect(hash('autumn', 0)).not.toBe(hash('spring', 0));
  });

  it('tells a dated job a minute later from one on time', () => {
    const hashAt = (hour: number): string => hashHistory(play({ ...LAB, demand: [dated('lever', [hour])] }));
    expect(hashAt(9)).not.toBe(hashAt(9 + 1 / 60));
  });
});
