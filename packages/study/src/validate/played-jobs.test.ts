import { createLocalTime } from '@buildweek/core';
import type { LoggedJob } from '@buildweek/records';
import { describe, expect, it } from 'vitest';
import { attended, bench, lab, part } from '../fixture/lab.ts';
import { civil, logged, logOf } from '../fixture/logged.ts';
import type { JudgedWeeks } from './judged-weeks.ts';
import { labOfLog } from './lab-of-log.ts';
import { playedJobs } from './played-jobs.ts';

const MONDAY = civil('2026-03-02T00:00');
const HOUR = 3_600_000;
const WEEKS: JudgedWeeks = { playedFrom: MONDAY, from: MONDAY, to: MONDAY + 8 * 168 * HOUR, weeks: 8 };
const STAGES = [bench('sand', attended('all', 1))];
const TWO = lab({ parts: [part('lever', STAGES), part('Ring', STAGES)] });
const LAB = {
  ...TWO,
  demand: [
    ...TWO.demand.map((stream) => ({ ...stream, name: `our ${stream.name}` })),
    ...TWO.demand.slice(0, 1),
  ],
  initialState: {
    jobs: [
      {
        stream: 'lever',
        quantity: 1,
        rush: false,
        arrivedAtHour: 0,
        dueAtHour: null,
        stage: 'sand',
        remainingHours: null,
      },
    ],
    machines: [],
  },
};

function found(jobs: readonly LoggedJob[], of = LAB) {
  return playedJobs(logOf(MONDAY, MONDAY + 9 * 168 * HOUR, jobs), of, WEEKS);
}

describe('playedJobs', () => {
  it('finds the demand by its name, else by that of its part, whatever the capitals and spaces', () => {
    const { jobs } = found([
      logged(MONDAY + 1, null, { part: ' LEVER ' }),
      logged(MONDAY + 2, null, { part: 'our  Lever' }),
      logged(MONDAY + 3, null, { part: 'ring' }),
    ]);
    expect(jobs.map(({ stream, part: name }) => [stream, name])).toEqual([
      [2, 'lever'],
      [0, 'lever'],
      [1, 'Ring'],
    ]);
  });

  it('counts what it cannot play or judge, with rows and with what to do about it', () => {
    const { jobs, leftOut } = found([
      logged(MONDAY, MONDAY + 5, { row: 2 }),
      logged(MONDAY, null, { row: 3, part: 'gadget' }),
      logged(MONDAY, null, { row: 4, part: 'gadget' }),
      logged(MONDAY, null, { row: 5, cancelled: true, isOpen: false }),
      logged(MONDAY, null, { row: 6, isOpen: false }),
      logged(WEEKS.to, null, { row: 7 }),
    ]);
    expect(jobs.map(({ logged: one, isJudged }) => [one.row, isJudged])).toEqual([
      [2, true],
      [6, false],
    ]);
    expect(leftOut.map(({ why, jobs: count, rows }) => [why, count, rows])).toEqual([
      ['unknown part', 2, [3, 4]],
      ['cancelled', 1, [5]],
      ['finish not known', 1, [6]],
      ['after the judged weeks', 1, [7]],
    ]);
    expect(leftOut[0]?.what).toContain('which of its parts that is ("our lever", "our Ring", "lever")');
  });

  it('lets jobs of one instant come a millisecond apart, in the order of the rows', () => {
    const { jobs } = found([
      logged(MONDAY + HOUR, null, { row: 9, part: 'ring' }),
      logged(MONDAY + HOUR, null, { row: 8 }),
      logged(MONDAY + HOUR + 1, null, { row: 7 }),
    ]);
    expect(jobs.map(({ logged: one, enters }) => [one.row, enters - HOUR])).toEqual([
      [8, 0],
      [9, 1],
      [7, 2],
    ]);
  });

  it('lets a job of which only the day is known come at noon', () => {
    const { jobs } = found([logged(MONDAY, null, { askedHasClock: false })]);
    expect(jobs[0]?.enters).toBe(12 * HOUR);
  });

  it('counts elapsed hours where the clocks are changed in between', () => {
    const changing = { ...LAB, clockChanges: [{ atHours: 100, localMinusElapsedHours: 1 }] };
    expect(found([logged(MONDAY + 200 * HOUR, null)], changing).jobs[0]?.enters).toBe(199 * HOUR);
  });
});

describe('labOfLog', () => {
  it('has the jobs of the log come when they came, in an empty lab, with what the log knows of them', () => {
    const { jobs } = found([
      logged(MONDAY + 2 * HOUR, null, { quantity: 7, rush: true }),
      logged(MONDAY + 3 * HOUR, null, { part: 'ring', quantity: null, rush: null }),
    ]);
    const { demand, initialState } = labOfLog(LAB, jobs);
    expect(demand.map(({ arrivals }) => arrivals)).toEqual([
      { kind: 'dated', jobs: [] },
      { kind: 'dated', jobs: [{ atHour: 3, quantity: null, rush: null }] },
      { kind: 'dated', jobs: [{ atHour: 2, quantity: 7, rush: true }] },
    ]);
    expect(initialState.jobs).toEqual([]);
  });

  it('gives the very milliseconds back, so that the n-th job to come is the n-th of the list', () => {
    const times = Array.from({ length: 300 }, (_, index) => MONDAY + 12_345_678 * index + (index % 7));
    const { jobs } = found(times.map((time) => logged(time, null)));
    const { demand } = labOfLog(LAB, jobs);
    const { arrivals } = demand[2] ?? {};
    const hours = arrivals?.kind === 'dated' ? arrivals.jobs.map(({ atHour }) => atHour) : [];
    const localTime = createLocalTime([]);
    expect(hours.map((hour) => localTime.toElapsed(Math.round(hour * HOUR)))).toEqual(
      jobs.map(({ enters }) => enters),
    );
    expect(jobs.length).toBe(300);
  });
});
