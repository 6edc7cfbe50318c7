import { describe, expect, it } from 'vitest';
import { dateWords, monthLabel, monthWords, orderDate } from './plan-dates.ts';

describe('dates of a plan', () => {
  it('count months from that of the start, over the end of a year', () => {
    expect([0, 1, 10, 22].map((month) => monthLabel('2027-03-15', month))).toEqual([
      '2027-03',
      '2027-04',
      '2028-01',
      '2029-01',
    ]);
    expect(monthWords('2028-01')).toBe('January 2028');
  });

  it('are the days by which something has to be ordered to work when a month begins', () => {
    // The first of July less six weeks; the plan's own month begins with the plan.
    expect(orderDate('2027-03-01', 4, 6)).toBe('2027-05-20');
    expect(orderDate('2027-03-15', 0, 2)).toBe('2027-03-01');
    // Part of a day is a day.
    expect(orderDate('2027-03-01', 4, 0.1)).toBe('2027-06-30');
    expect(dateWords('2027-05-20')).toBe('20 May 2027');
  });
});
