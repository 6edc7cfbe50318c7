import { describe, expect, it } from 'vitest';
import { edited, problemsOf } from '../fixture/plain-lab.ts';

const HOURS = 'hours:\n';

/** Warnings of the plain lab, which runs from 2027-03-01, with such closed days. */
const closed = (days: string) => problemsOf(edited(HOURS, `${HOURS}  closed: ${days}\n`));

describe('closed days', () => {
  it('in the plan, or of a year in which some of it lies, are accepted', () => {
    expect(closed('[2027-03-26, 2027-12-24 to 2028-01-01]')).toEqual([]);
    // 13 weeks and 13 more in which jobs may finish end on Sunday, 2027-08-29.
    expect(closed('2027-08-29')).toEqual([]);
    expect(closed('2027-08-30')).toHaveLength(1);
    expect(closed('[2027-01-01, 2027-03-26]')).toEqual([]);
  });

  it('that all lie outside the plan are warned of once', () => {
    expect(closed('[2026-12-24, 2027-01-01]')).toMatchObject([
      {
        severity: 'warning',
        line: 5,
        column: 12,
        message: 'All of these closed days lie outside the plan and have no effect.',
      },
    ]);
    expect(closed('2028-12-24')).toMatchObject([
      { message: 'The closed day 2028-12-24 lies outside the plan and has no effect.' },
    ]);
  });

  it('more than a year away from the plan are warned of each', () => {
    expect(
      closed('[2027-03-26, 2025-03-26, 2072-03-29]').map(({ column, found }) => [column, found]),
    ).toEqual([
      [24, '2025-03-26'],
      [36, '2072-03-29'],
    ]);
  });

  it('of single hours are looked at too', () => {
    expect(problemsOf(edited('12:30-16:30 }', '12:30-16:30, closed: 2024-03-01 }'))).toMatchObject([
      { line: 5, message: 'The closed day 2024-03-01 lies outside the plan and has no effect.' },
    ]);
  });

  it.each([
    [HOURS, `${HOURS}  holidays: [2027-03-26, 2027-03-29]\n`, 5, 'closed: [2027-03-26, 2027-03-29]'],
    [HOURS, `${HOURS}  holiday: 2027-03-26\n`, 5, 'closed: 2027-03-26'],
    [HOURS, `holidays: [2027-03-26]\n${HOURS}`, 4, 'closed: [2027-03-26] under "hours"'],
    [HOURS, `${HOURS}  closd: [2027-03-26]\n`, 5, 'closed: [2027-03-26]'],
    ['12:30-16:30 }', '12:30-16:30, holidays: 2027-03-26 }', 5, 'closed'],
    ['count: 2, hours', 'count: 2, holidays: 2027-03-26, hours', 7, 'leave'],
  ])('under another name are answered with theirs: %s -> %s', (from, to, line, write) => {
    expect(problemsOf(edited(from, to))).toMatchObject([{ severity: 'error', line, write }]);
    expect(problemsOf(edited(from, to))).toHaveLength(1);
  });
});

describe('leave', () => {
  it('behind the last week of the plan is warned of at the person and has no effect', () => {
    const text = edited('count: 2, hours', 'count: 2, leave: { 1: 2027-03-02, 2: 2029-04-05 }, hours');
    expect(problemsOf(text)).toMatchObject([
      {
        severity: 'warning',
        line: 7,
        column: 52,
        message: 'This leave begins after the last week of the plan and has no effect.',
        found: '2029-04-05 to 2029-04-05',
      },
    ]);
  });
});
