import type { History } from '@buildweek/core';
import type { Lab } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import { economics } from '../fixture/economics.ts';
import { benchHours, HOUR, history, jobClass, machineHistory, peopleHistory } from '../fixture/history.ts';
import { attended, bench, lab, machine, part, people } from '../fixture/lab.ts';
import { onTimeShare, shareWithin } from '../fixture/plans.ts';
import { moneyMeasures } from './money-measures.ts';
import { standardMeasures } from './standard-measures.ts';
import { askedShare, betterWay, observedTargets, targetMeasures } from './target-measures.ts';

const BASE = lab({
  people: [people('technicians', 2, ['hands']), people('students', 1, ['hands'])],
  machines: [machine('resin'), machine('powder', { count: 0 })],
  parts: [part('ring', [bench('sand', attended('hands', 1))])],
});
const HOURS24 = { kind: 'clock', hours: 24 } as const;

function withDemand(more: Partial<Lab['demand'][number]>): Lab {
  return { ...BASE, demand: BASE.demand.map((stream) => ({ ...stream, ...more })) };
}

/** Three normal jobs and a rush job finished, one normal job left. */
const WEEK = history(0, {
  jobClasses: [
    jobClass('ring', false, [10, 20, 60], { arrived: 4, unfinished: 1, promised: 4, onTime: 2, sentOut: 1 }),
    jobClass('ring', true, [6], { promised: 1, onTime: 1 }),
  ],
  machines: [machineHistory('resin', { print: 42 })],
  people: [
    peopleHistory('technicians', [
      { work: 20, 'other duties': 5, idle: 15 },
      { work: 10, idle: 30 },
    ]),
    peopleHistory('students', [{ work: 2, idle: 8 }]),
  ],
  partHours: [benchHours('ring', 4, 8, { person: 6, shift: 10, machine: 3, carrier: 1, batch: 4 })],
  weeks: {
    arrivedJobs: Float64Array.of(5),
    promisedJobs: Float64Array.of(5),
    onTimeJobs: Float64Array.of(3),
    finishedJobs: Float64Array.of(4),
    finishedParts: Float64Array.of(12),
    jobsInLab: Float64Array.of(2.5),
  },
});

/** Numerator over denominator of a measure. */
function ratio(of: Lab, name: string, in_: History = WEEK): number {
  const found = standardMeasures([of]).find((measure) => measure.name === name);
  if (found === undefined) throw new Error(`There is no measure ${name}.`);
  const [numerator, denominator] = found.of(in_);
  return numerator / denominator;
}

describe('the measures of a plan', () => {
  const rush = withDemand({ rushShare: 0.2, due: HOURS24, rushDue: HOURS24 });

  it('count lead times of finished jobs, and percentiles with the unfinished as later than everything', () => {
    expect(ratio(rush, 'mean lead time')).toBeCloseTo((10 + 20 + 60 + 6) / 4, 9);
    // Of five jobs the third is done after 20 h; the fifth, at nine of ten, is not finished.
    expect(ratio(rush, 'half of jobs within')).toBeCloseTo(20, 9);
    expect(ratio(rush, 'nine of ten jobs within')).toBe(Number.POSITIVE_INFINITY);
    expect(ratio(rush, 'nine of ten rush jobs within')).toBeCloseTo(6, 9);
  });

  it('count a period without any job as nothing', () => {
    const empty = history(0, { jobClasses: [jobClass('ring', false, []), jobClass('ring', true, [])] });
    const nine = standardMeasures([rush]).find(({ name }) => name === 'nine of ten jobs within');
    expect(nine?.of(empty)).toEqual([0, 0]);
  });

  it('count promises kept of promises given', () => {
    expect(ratio(rush, 'jobs on time')).toBeCloseTo(3 / 5, 12);
    expect(ratio(rush, 'rush jobs on time')).toBe(1);
  });

  it('count people at work with their other duties over their hours on duty, all together and each group', () => {
    expect(ratio(rush, 'people at work')).toBeCloseTo((25 + 10 + 2) / 90, 12);
    expect(ratio(rush, 'technicians at work')).toBeCloseTo(35 / 80, 12);
    expect(ratio(rush, 'students at work')).toBeCloseTo(0.2, 12);
  });

  it('count machines over the clock, and groups that a plan has none of too', () => {
    expect(ratio(rush, 'resin at work')).toBeCloseTo(42 / 168, 12);
    const powder = standardMeasures([rush]).find(({ name }) => name === 'powder at work');
    expect(powder?.of(WEEK)).toEqual([0, 0]);
  });

  it('count waits of an average finished job by what it waits for', () => {
    expect(ratio(rush, 'wait for people')).toBeCloseTo(16 / 4, 12);
    expect(ratio(rush, 'wait for machines')).toBeCloseTo(4 / 4, 12);
    expect(ratio(rush, 'wait for a build to fill')).toBeCloseTo(4 / 4, 12);
  });

  it('count pieces and jobs by the week, and jobs sent out of those that came', () => {
    expect(ratio(rush, 'finished pieces')).toBe(12);
    expect(ratio(rush, 'jobs in the lab')).toBe(2.5);
    const sentOut = { always: true } as unknown as Lab['demand'][number]['sentOut'];
    expect(ratio(withDemand({ sentOut }), 'jobs sent out')).toBeCloseTo(1 / 5, 12);
  });

  it('are one list for labs of different shapes, with no value where a lab has none of it', () => {
    const sentOut = { always: true } as unknown as Lab['demand'][number]['sentOut'];
    const other = lab({
      people: [people('helpers', 1, ['hands'])],
      machines: [machine('filament'), machine('resin')],
      parts: [part('ring', [bench('sand', attended('hands', 1))])],
    });
    const both = standardMeasures([other, withDemand({ sentOut })]);
    expect(both.map(({ name }) => name).filter((name) => /sent|at work/.test(name))).toEqual([
      'jobs sent out',
      'people at work',
      'helpers at work',
      'technicians at work',
      'students at work',
      'filament at work',
      'resin at work',
      'powder at work',
    ]);
    expect(both.find(({ name }) => name === 'helpers at work')?.of(WEEK)).toEqual([0, 0]);
  });

  it('are only those that the lab has', () => {
    const names = (of: Lab) => standardMeasures([of]).map(({ name }) => name);
    expect(names(BASE).filter((name) => /rush|time|sent/.test(name))).toEqual(['mean lead time']);
    expect(names(withDemand({ rushShare: 1 })).some((name) => name.includes('rush'))).toBe(false);
    expect(new Set(names(rush)).size).toBe(names(rush).length);
  });
});

describe('the measures of targets', () => {
  it('are those that a replication says something about, in their order', () => {
    const budget = { kind: 'budget', wording: 'budget', of: 'year', atMost: 1 } as const;
    const targets = [budget, onTimeShare(0.9), shareWithin(0.8, { within: { kind: 'clock', hours: 20 } })];
    const observed = observedTargets(targets);
    expect(observed.map(({ kind }) => kind)).toEqual(['on time', 'share within']);
    const [onTime, within] = targetMeasures(BASE, observed);
    expect(onTime?.of(WEEK)).toEqual([3, 5]);
    // 10, 20 and 6 hours of the five jobs.
    expect(within?.of(WEEK)).toEqual([3, 5]);
    expect(observed.map(askedShare)).toEqual([0.9, 0.8]);
  });

  it('know that of being busy less is better', () => {
    const busy = {
      kind: 'busy',
      wording: '',
      of: 'people',
      group: null,
      atMost: 0.8,
      meaning: { kind: 'long run' },
    } as const;
    expect([betterWay(busy), betterWay(onTimeShare(0.9)), askedShare(busy)]).toEqual([
      'lower',
      'higher',
      0.8,
    ]);
  });
});

describe('the measures of money', () => {
  it('are none without money, and else what is known beforehand, what was spent, and that for each piece', () => {
    expect(moneyMeasures(BASE, null)).toEqual([]);
    const prices = economics({
      otherPerYear: 5200,
      parts: [],
      materials: [
        { material: 'grey', pricePerKilogram: 0 } as ReturnType<typeof economics>['materials'][number],
      ],
    });
    const free = { ...BASE, parts: [], machines: [], people: [] };
    const [committed, spent, piece] = moneyMeasures(free, prices);
    expect(committed?.of(WEEK)).toEqual([5200, 1]);
    const [total = 0, years = 1] = spent?.of(WEEK) ?? [];
    expect(total / years).toBeCloseTo(5200, 6);
    expect(years).toBeCloseTo((WEEK.windowEnd - WEEK.windowStart) / (365.25 * 24 * HOUR), 9);
    const [cost = 0, pieces = 1] = piece?.of(WEEK) ?? [];
    expect([cost / pieces, pieces]).toEqual([total / 12, 12]);
  });
});
