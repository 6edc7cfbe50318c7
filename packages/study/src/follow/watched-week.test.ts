import type { StateSpan } from '@buildweek/core';
import { type Run, watchedWeekSchema } from '@buildweek/results';
import { describe, expect, it } from 'vitest';
import { twoWays } from '../fixture/printing-lab.ts';
import { entry, HOUR, replayWith } from '../fixture/trace.ts';
import { replayOf } from './replay.ts';
import { middleWeek, watchedWeekOf } from './watched-week.ts';

const RUN = {
  seed: 'week',
  replications: 20,
  weeks: 3,
  capWeeks: 4,
  ignoredWeeks: { weeks: 1 },
} as Run;

describe('watchedWeekOf', () => {
  const lab = twoWays();
  const replay = replayOf(lab, RUN, 0);
  const week = watchedWeekOf(replay, { name: 'Two ways', lab, run: RUN }, 2);

  it('is a document of its schema', () => {
    expect(() => watchedWeekSchema.parse(week)).not.toThrow();
  });

  it('has a row for every machine, station and person, without a gap over the whole week', () => {
    const individuals = [...lab.machines, ...lab.stations, ...lab.people].flatMap(({ name, count }) =>
      Array.from({ length: count }, (_, index) => `${name} ${index + 1}`),
    );
    expect(week.rows.map(({ name }) => name)).toEqual(individuals);
    for (const { spans } of week.rows) {
      expect(spans[0]?.from).toBe(0);
      expect(spans.at(-1)?.to).toBe(168);
      expect(spans.slice(1).map(({ from }) => from)).toEqual(spans.slice(0, -1).map(({ to }) => to));
    }
  });

  it('says of every print which jobs were in it, and of every hour of work what it was', () => {
    const spans = week.rows.flatMap((row) => row.spans.map((span) => ({ ...span, kind: row.kind })));
    const prints = spans.filter(({ state }) => state === 'print');
    const work = spans.filter(({ state, kind }) => kind === 'person' && state === 'work');
    expect(prints.length).toBeGreaterThan(0);
    expect(work.length).toBeGreaterThan(0);
    expect(prints.every(({ jobs }) => jobs.length > 0)).toBe(true);
    expect(work.every(({ what }) => what !== '')).toBe(true);
  });

  it('tells the way of every job that was in the lab at some moment of the week', () => {
    expect(week.jobs.length).toBeGreaterThan(0);
    for (const { asked, until, work, waits } of week.jobs) {
      expect(asked).toBeLessThan(168);
      expect(until).toBeGreaterThan(0);
      const told = waits.reduce((sum, { hours }) => sum + hours, work);
      expect(told).toBeCloseTo(until - asked, 3);
    }
  });

  it('shades the hours in which nobody is there', () => {
    const open = 168 - week.closed.reduce((sum, { from, to }) => sum + to - from, 0);
    expect(open).toBeCloseTo(40, 6);
  });

  it('lets a machine hold its build until it is unloaded', () => {
    const span = (from: number, to: number, state: string): StateSpan => ({
      from: from * HOUR,
      to: to * HOUR,
      state,
      unit: 'quick 1',
      person: null,
    });
    const print = { stage: 'build', phase: 'print', unit: 'quick 1' } as const;
    const held = replayWith(
      [entry(1, 'job arrives'), entry(2, 'step starts', print), entry(5, 'step ends', print)],
      [span(0, 2, 'idle'), span(2, 5, 'print'), span(5, 9, 'waiting to be unloaded'), span(9, 200, 'idle')],
    );
    const own = { ...lab, machines: [{ ...lab.machines[0], name: 'quick', count: 1 }] } as typeof lab;
    const [row] = watchedWeekOf(held, { name: 'Two ways', lab: own, run: RUN }, 1).rows;
    expect(row?.spans.map(({ from, to, state, jobs }) => [from, to, state, jobs])).toEqual([
      [0, 2, 'idle', []],
      [2, 5, 'print', [1]],
      [5, 9, 'waiting to be unloaded', [1]],
      [9, 168, 'idle', []],
    ]);
  });

  it('refuses a week that was not measured', () => {
    expect(() => watchedWeekOf(replay, { name: 'Two ways', lab, run: RUN }, 4)).toThrow(RangeError);
  });
});

describe('middleWeek', () => {
  it('is the one in the middle of the measured weeks', () => {
    expect([1, 2, 13, 26].map(middleWeek)).toEqual([1, 1, 7, 13]);
  });
});
