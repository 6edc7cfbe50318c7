import type { HourSpan, Lab, Leave, StaffRules } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import { lab, people } from '../fixture/lab.ts';
import { dutiesOf } from './duties.ts';
import { ruleBreaches } from './rule-breaches.ts';

const RULES: StaffRules = {
  restHours: 11,
  hoursPerWeek: 48,
  daysInARow: 6,
  night: { fromHour: 23, toHour: 30 },
};

/** The windows of days of the week, 0 is Monday. */
function shifts(...windows: readonly (readonly [day: number, from: number, to: number])[]): HourSpan[] {
  return windows.map(([day, from, to]) => ({ fromHour: day * 24 + from, toHour: day * 24 + to }));
}

/** One guard with these hours. */
function guarded(weekly: readonly HourSpan[], more: Partial<Lab> = {}, leave: readonly Leave[] = []): Lab {
  return lab({
    calendars: [{ name: 'shifts', weekly, closedDays: [], extra: [] }],
    labCalendar: 'shifts',
    people: [people('guards', 1, ['all'], { calendar: 'shifts', leave })],
    ...more,
  });
}

/** What is broken in some weeks, in short. */
function broken(testLab: Lab, weeks = 1, rules: Partial<StaffRules> = {}): unknown[] {
  const found = ruleBreaches(testLab, dutiesOf(testLab, weeks), { ...RULES, ...rules });
  return found.map(({ rule, when, found: value, times, firstDate }) => [rule, when, value, times, firstDate]);
}

describe('Rest between duties', () => {
  it('is too short where a night shift goes over into a day shift', () => {
    const nightThenDay = shifts([0, 22, 30], [1, 14, 22]);
    expect(broken(guarded(nightThenDay))).toEqual([
      ['rest', 'Tuesday 06:00 to Tuesday 14:00', 8, 1, '2025-01-07'],
    ]);
    expect(broken(guarded(nightThenDay), 3)).toEqual([
      ['rest', 'Tuesday 06:00 to Tuesday 14:00', 8, 3, '2025-01-07'],
    ]);
    expect(broken(guarded(nightThenDay), 1, { restHours: 8 })).toEqual([]);
  });

  it('is not ended by a break, and not hidden by one', () => {
    const day = shifts([0, 7, 11.5], [0, 12, 15.5], [1, 7, 11.5], [1, 12, 15.5]);
    expect(broken(guarded(day))).toEqual([]);
    // Night, two hours off, and a day: of the 24 hours from its start only the last six are free.
    expect(broken(guarded(shifts([0, 22, 30], [1, 8, 16], [2, 2, 4])))).toEqual([
      ['rest', 'Tuesday 16:00 to Tuesday 22:00', 6, 1, '2025-01-07'],
    ]);
  });

  it('may lie between two halves of a day when the night is long enough', () => {
    const split = shifts([0, 8, 12], [0, 17, 21], [1, 8, 12], [1, 17, 21]);
    expect(broken(guarded(split))).toEqual([]);
    const later = shifts([0, 8, 12], [0, 18, 22], [1, 8, 12]);
    expect(broken(guarded(later))).toEqual([['rest', 'Monday 22:00 to Tuesday 08:00', 10, 1, '2025-01-06']]);
  });

  it('is looked for over the end of the week', () => {
    const sundayThenMonday = shifts([0, 6, 14], [6, 14, 22]);
    expect(broken(guarded(sundayThenMonday), 3)).toEqual([
      ['rest', 'Sunday 22:00 to Monday 06:00', 8, 2, '2025-01-12'],
    ]);
  });

  it('is an hour shorter in the night in which the clock goes forward', () => {
    // Saturday to 19:00, Sunday from 06:00: 11 h by the wall, 10 h in the night that loses one.
    const weekend = shifts([5, 11, 19], [6, 6, 10]);
    const clockChanges = [{ atHours: 6 * 24 + 1, localMinusElapsedHours: 1 }];
    expect(broken(guarded(weekend))).toEqual([]);
    expect(broken(guarded(weekend, { clockChanges }))).toEqual([
      ['rest', 'Saturday 19:00 to Sunday 06:00', 10, 1, '2025-01-11'],
    ]);
  });

  it('is none for who is on duty day and night', () => {
    const always = [{ fromHour: 0, toHour: 168 }];
    expect(broken(guarded(always))).toEqual([
      ['rest', 'on duty from Monday 00:00 for 24 h and more', 0, 1, '2025-01-06'],
      ['hours a week', 'Monday to Sunday', 168, 1, '2025-01-06'],
      ['days in a row', 'Monday to Sunday', 7, 1, '2025-01-06'],
    ]);
  });
});

describe('Hours a week', () => {
  it('are those from Monday to Sunday: a Sunday night counts in both weeks', () => {
    const week = shifts([0, 8, 18], [1, 8, 18], [2, 8, 18], [3, 8, 18], [6, 20, 29]);
    // 40 h, 4 h of Sunday, and 5 h of the Monday morning, also after the Sunday before the plan.
    expect(broken(guarded(week), 3, { restHours: 1 })).toEqual([
      ['hours a week', 'Monday to Sunday', 49, 3, '2025-01-06'],
    ]);
  });

  it('leave out who is on leave', () => {
    const week = shifts([0, 8, 18], [1, 8, 18], [2, 8, 18], [3, 8, 18], [4, 8, 18]);
    expect(broken(guarded(week))).toEqual([['hours a week', 'Monday to Sunday', 50, 1, '2025-01-06']]);
    expect(broken(guarded(week, {}, [{ person: 1, fromHour: 96, toHour: 120 }]))).toEqual([]);
  });
});

describe('Days in a row', () => {
  it('are counted over the end of the week, and end with a day off or leave', () => {
    const daily = shifts([0, 8, 12], [1, 8, 12], [2, 8, 12], [3, 8, 12], [4, 8, 12], [5, 8, 12], [6, 8, 12]);
    expect(broken(guarded(daily), 2)).toEqual([['days in a row', 'Monday to Sunday', 14, 1, '2025-01-06']]);
    const sixDays = daily.slice(0, 6);
    expect(broken(guarded(sixDays), 2)).toEqual([]);
    expect(broken(guarded(sixDays), 2, { daysInARow: 5 })).toEqual([
      ['days in a row', 'Monday to Saturday', 6, 2, '2025-01-06'],
    ]);
    expect(broken(guarded(daily, {}, [{ person: 1, fromHour: 6 * 24, toHour: 7 * 24 }]), 2)).toEqual([
      ['days in a row', 'Monday to Sunday', 7, 1, '2025-01-13'],
    ]);
  });
});

describe('Persons', () => {
  it('are told one by one, each with what that person does', () => {
    const testLab = guarded(shifts([0, 22, 30], [1, 14, 22]), {
      people: [
        people('guards', 2, ['all'], {
          calendar: 'shifts',
          leave: [{ person: 2, fromHour: 24, toHour: 48 }],
        }),
      ],
    });
    const found = ruleBreaches(testLab, dutiesOf(testLab, 1), RULES);
    expect(found.map(({ person }) => person)).toEqual(['guards 1']);
  });
});
