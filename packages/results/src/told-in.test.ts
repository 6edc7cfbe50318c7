import { expect, test } from 'vitest';
import type { JobClass } from './measures.ts';
import { periodName, toldInDays } from './told-in.ts';

function allJobs(mean: JobClass['meanLeadTime']): JobClass {
  const refused = { kind: 'refused', reason: 'not asked' } as const;
  return {
    part: null,
    priority: 'all',
    jobs: 100,
    unfinished: 0,
    meanLeadTime: mean,
    standardDeviationOfLeadTime: refused,
    percentiles: [],
    onTime: refused,
    onTimeOnePeriod: refused,
  };
}

test('Lead times are told in days, unless an average job takes less than one.', () => {
  const hours = (value: number): JobClass =>
    allJobs({ kind: 'estimate', value, low: value, high: value, level: 0.95, replications: 20 });
  expect([24, 23.9].map((value) => toldInDays([hours(value)]))).toEqual([true, false]);
  expect(toldInDays([allJobs({ kind: 'never', reason: 'the lab is overloaded' })])).toBe(true);
});

test('Thirteen weeks are a quarter, and all else is a period of its weeks.', () => {
  expect([13, 6, 1].map(periodName)).toEqual(['quarter', 'period of 6 weeks', 'period of 1 week']);
});
