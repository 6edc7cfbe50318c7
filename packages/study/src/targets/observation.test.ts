import type { JobSelection, TargetMeaning } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import { history, jobClass, machineHistory, peopleHistory } from '../fixture/history.ts';
import { lab } from '../fixture/lab.ts';
import { type ObservedTarget, observeTarget } from './observation.ts';

const ALL: JobSelection = { part: null, rush: null };
const LONG_RUN: TargetMeaning = { kind: 'long run' };
const testLab = lab({
  deadlines: [
    { kind: 'working days', days: 2, cutOffHour: 14 },
    { kind: 'working days', days: 5, cutOffHour: 14 },
  ],
});

function within(hours: number, share: number, jobs = ALL, meaning = LONG_RUN): ObservedTarget {
  return { kind: 'share within', wording: '', jobs, share, within: { kind: 'clock', hours }, meaning };
}

/** Ten normal levers, of which one was cancelled and two are unfinished; four rush levers; one cap. */
const played = history(0, {
  jobClasses: [
    jobClass('lever', false, [1, 2, 24, 48, 48.1, 50, 60], {
      arrived: 10,
      cancelled: 1,
      unfinished: 2,
      promised: 9,
      onTime: 5,
      endedBy: Float64Array.of(4, 6),
    }),
    jobClass('lever', true, [3, 4, 5, 100], {
      promised: 4,
      onTime: 3,
      endedBy: Float64Array.of(3, 4),
    }),
    jobClass('cap', false, [47], { endedBy: Float64Array.of(1, 1) }),
  ],
  machines: [
    machineHistory('resin', {
      print: 80,
      'set-up': 4,
      down: 6,
      maintenance: 2,
      'waiting to be unloaded': 40,
    }),
    machineHistory('resin', { print: 20, 'waiting to start': 10, off: 60 }),
    machineHistory('powder', { 'cool-down': 50, 'test print': 1, 'waiting to fill': 30 }),
  ],
  people: [
    peopleHistory('technicians', [
      { work: 25, 'other duties': 5, idle: 10, overtime: 3 },
      { work: 30, idle: 10 },
    ]),
    peopleHistory('helpers', [{ work: 10, idle: 10 }]),
  ],
});

describe('jobs within a time', () => {
  it('are those that take at most so long by the clock; unfinished ones are later, cancelled ones none', () => {
    // 1, 2, 24, 48 h; 3, 4, 5 h; 47 h: eight of 9 + 4 + 1.
    expect(observeTarget(testLab, within(48, 0.5), played)).toEqual({
      numerator: 8,
      denominator: 14,
      value: 1,
    });
  });

  it('are those of a part or a priority', () => {
    const of = (jobs: JobSelection) => {
      const { numerator, denominator } = observeTarget(testLab, within(48, 0.5, jobs), played);
      return [numerator, denominator];
    };
    expect(of({ part: 'lever', rush: null })).toEqual([7, 13]);
    expect(of({ part: null, rush: true })).toEqual([3, 4]);
    expect(of({ part: 'lever', rush: false })).toEqual([4, 9]);
    expect(of({ part: 'cap', rush: null })).toEqual([1, 1]);
  });

  it('are by working days those that the history has counted', () => {
    const target = (days: number): ObservedTarget => ({
      ...(within(1, 0.9) as Extract<ObservedTarget, { kind: 'share within' }>),
      within: { kind: 'working days', days, cutOffHour: 14 },
    });
    expect(observeTarget(testLab, target(2), played)).toMatchObject({ numerator: 8, denominator: 14 });
    expect(observeTarget(testLab, target(5), played)).toMatchObject({ numerator: 11, denominator: 14 });
    expect(() => observeTarget(testLab, target(3), played)).toThrow('does not count by 3 working days');
  });
});

describe('jobs on time', () => {
  it('are those that keep their promise, of those that have one', () => {
    const target: ObservedTarget = {
      kind: 'on time',
      wording: '',
      jobs: ALL,
      share: 0.75,
      meaning: LONG_RUN,
    };
    expect(observeTarget(testLab, target, played)).toEqual({
      numerator: 8,
      denominator: 13,
      value: 8 - 9.75,
    });
    const rush = { ...target, jobs: { part: null, rush: true } };
    expect(observeTarget(testLab, rush, played)).toEqual({ numerator: 3, denominator: 4, value: 0 });
  });
});

describe('busy', () => {
  const busy = (of: 'people' | 'machines' | 'stations', group: string | null) =>
    observeTarget(testLab, { kind: 'busy', wording: '', of, group, atMost: 0.8, meaning: LONG_RUN }, played);

  it('people are in work and other duties, of their hours on duty; overtime is neither', () => {
    expect(busy('people', 'technicians')).toEqual({ numerator: 60, denominator: 80, value: 4 });
    expect(busy('people', 'helpers')).toMatchObject({ numerator: 10, denominator: 20 });
    expect(busy('people', null)).toMatchObject({ numerator: 70, denominator: 100 });
  });

  it('machines are in every state but idle, waiting and off, of the hours of the clock', () => {
    expect(busy('machines', 'resin')).toMatchObject({ numerator: 112, denominator: 336 });
    expect(busy('machines', 'powder')).toMatchObject({ numerator: 51, denominator: 168 });
    expect(busy('machines', null)).toMatchObject({ numerator: 163, denominator: 504 });
  });
});

describe('the value of a replication', () => {
  const chance: TargetMeaning = { kind: 'chance of a period', chance: 0.9 };

  it('is 1 or 0 less the chance, where so many periods have to meet the target', () => {
    const value = (share: number) => observeTarget(testLab, within(48, share, ALL, chance), played).value;
    expect(value(0.5)).toBeCloseTo(0.1, 12);
    // Met exactly.
    expect(value(8 / 14)).toBeCloseTo(0.1, 12);
    expect(value(0.6)).toBeCloseTo(-0.9, 12);
  });

  it('counts a period without any such job as one that meets it', () => {
    const empty = history(1, { jobClasses: [jobClass('lever', true, [])] });
    expect(observeTarget(testLab, within(48, 0.9, ALL, chance), empty)).toMatchObject({
      denominator: 0,
      value: expect.closeTo(0.1, 12),
    });
  });

  it('has a mean of at least 0 exactly when the ratio over all replications is at least what is asked for', () => {
    const values = [played, history(1, { jobClasses: [jobClass('lever', false, [1, 1, 1, 99])] })].map(
      (one) => observeTarget(testLab, within(48, 11 / 18), one),
    );
    const sum = (pick: (one: (typeof values)[number]) => number): number =>
      values.reduce((all, one) => all + pick(one), 0);
    expect(sum((one) => one.numerator) / sum((one) => one.denominator)).toBe(11 / 18);
    expect(sum((one) => one.value)).toBeCloseTo(0, 12);
  });
});
