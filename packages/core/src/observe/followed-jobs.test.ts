import type { Lab } from '@buildweek/model';
import { WAIT_CAUSES } from '@buildweek/results';
import { describe, expect, it } from 'vitest';
import { at, attended, dated, HOUR, lab, part, people, play, waitStage, workStage } from '../fixture/lab.ts';
import { hashHistory } from './hash.ts';

/** One technician from 08:00 to 16:00; sanding takes two hours, drying one. */
function sanding(hours: readonly number[], more: Partial<Lab> = {}): Lab {
  return lab({
    people: [people('technicians', 1, ['all'])],
    parts: [part('lever', [workStage('sand', attended('all', 2)), waitStage('dry', 1)])],
    demand: [dated('lever', hours)],
    ...more,
  });
}

describe('Jobs that are followed one by one', () => {
  it('say when they ended, and how long they were worked on and waited, step by step and cause by cause', () => {
    const testLab = sanding([at('mon', '09:00'), at('mon', '09:30')]);
    const { followed } = play(testLab, { followJobs: 2, followSteps: true });
    expect(followed?.map(({ endedAt }) => endedAt / HOUR)).toEqual([at('mon', '12:00'), at('mon', '14:00')]);
    const [, second] = followed ?? [];
    // The third step is to be made outside.
    expect(Array.from(second?.work ?? [], (time) => time / HOUR)).toEqual([2, 1, 0]);
    const sand = Array.from(second?.waits?.subarray(0, WAIT_CAUSES.length) ?? [], (time) => time / HOUR);
    expect(sand).toEqual(WAIT_CAUSES.map((cause) => (cause === 'person' ? 1.5 : 0)));
  });

  it('end the replication once they are done, or once the one that is waited for is', () => {
    const testLab = sanding([at('mon', '09:00'), at('mon', '09:30'), at('fri', '15:00')]);
    const endedAt = (more: Parameters<typeof play>[1]) => play(testLab, { weeks: 1, ...more }).endedAt / HOUR;
    expect(endedAt({})).toBe(at('mon', '11:00', 1));
    expect(endedAt({ followJobs: 3 })).toBe(at('mon', '11:00', 1));
    expect(endedAt({ followJobs: 2 })).toBe(at('mon', '14:00'));
    expect(endedAt({ followJobs: 3, awaitedJob: 0 })).toBe(at('mon', '12:00'));
    const { followed, laws } = play(testLab, { weeks: 1, followJobs: 3, awaitedJob: 1 });
    expect(followed?.map(({ endedAt }) => endedAt / HOUR)).toEqual([
      at('mon', '12:00'),
      at('mon', '14:00'),
      Number.POSITIVE_INFINITY,
    ]);
    expect(laws.jobArea).toBe(laws.jobStays);
    expect([laws.machineImbalance, laws.personImbalance, laws.leadTimeImbalance]).toEqual([0, 0, 0]);
  });

  it('that are not done when the replication ends, end later than everything', () => {
    const never = sanding([at('mon', '09:00')], { people: [] });
    expect(play(never, { followJobs: 1 }).followed?.[0]?.endedAt).toBe(Number.POSITIVE_INFINITY);
  });

  it('change nothing of what happens until then', () => {
    const testLab = sanding([at('mon', '09:00'), at('mon', '09:30')]);
    const { trace, endedAt } = play(testLab, { followJobs: 2 });
    expect(trace).toEqual((play(testLab).trace ?? []).filter(({ time }) => time <= endedAt));
    expect(trace?.length).toBeGreaterThan(5);
  });
});

describe('A trace that is wanted for a while', () => {
  it('says the same until then, and nothing after it', () => {
    const testLab = sanding([at('mon', '09:00'), at('mon', '09:30')]);
    const until = at('mon', '11:30') * HOUR;
    const whole = play(testLab).trace ?? [];
    const short = play(testLab, { traceUntil: until });
    expect(short.trace).toEqual(whole.filter(({ time }) => time <= until));
    expect(short.trace?.length).toBeGreaterThan(3);
    expect(hashHistory(short)).toBe(hashHistory(play(testLab)));
  });
});
