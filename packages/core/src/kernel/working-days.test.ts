import type { DueRule, HourSpan, WorkingCalendar } from '@buildweek/model';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MILLISECONDS_PER_HOUR as HOUR, MILLISECONDS_PER_WEEK as WEEK } from './clock.ts';
import { createLocalTime } from './local-time.ts';
import { createWorkingDays, type WorkingDays } from './working-days.ts';

const NO_CHANGES = createLocalTime([]);
const WEEKDAYS = [0, 1, 2, 3, 4];
const FRIDAY = 4 * 24;
const SATURDAY = 5 * 24;
const NEXT_MONDAY = 7 * 24;

const span = (day: number, from: number, to: number): HourSpan => ({
  fromHour: day * 24 + from,
  toHour: day * 24 + to,
});

function calendarOf(weekly: readonly HourSpan[], more: Partial<WorkingCalendar> = {}): WorkingCalendar {
  return { name: 'lab', weekly, closedDays: [], extra: [], ...more };
}

const DAY_SHIFT = calendarOf(WEEKDAYS.flatMap((day) => [span(day, 8, 12), span(day, 12.5, 16.5)]));

const inDays = (days: number, cutOffHour: number | null = null): DueRule => ({
  kind: 'working days',
  days,
  cutOffHour,
});

/** Hours at which a job that is asked for at an hour is due. */
function due(days: WorkingDays, hour: number, rule: DueRule): number {
  return days.dueAfter(hour * HOUR, rule) / HOUR;
}

describe('createWorkingDays', () => {
  const days = createWorkingDays(DAY_SHIFT, NO_CHANGES, 8 * WEEK);

  it('promises the closing time of the n-th working day after the day of asking', () => {
    expect(due(days, 9, inDays(0))).toBe(16.5);
    expect(due(days, 9, inDays(1))).toBe(24 + 16.5);
    expect(due(days, FRIDAY + 9, inDays(1))).toBe(NEXT_MONDAY + 16.5);
    expect(due(days, 9, inDays(5))).toBe(NEXT_MONDAY + 16.5);
  });

  it('counts a promise after the daily cut-off from the next working day', () => {
    expect(due(days, 14 - 1e-6, inDays(1, 14))).toBe(24 + 16.5);
    expect(due(days, 14, inDays(1, 14))).toBe(48 + 16.5);
    expect(due(days, FRIDAY + 15, inDays(0, 14))).toBe(NEXT_MONDAY + 16.5);
  });

  it('counts what is asked for on a day that is no working day as asked for on the next one', () => {
    // The cut-off does not matter there: the next working day has only begun when it counts.
    for (const cutOffHour of [null, 14]) {
      expect(due(days, SATURDAY + 15, inDays(0, cutOffHour))).toBe(NEXT_MONDAY + 16.5);
      expect(due(days, SATURDAY + 24 + 2, inDays(2, cutOffHour))).toBe(NEXT_MONDAY + 48 + 16.5);
    }
  });

  it('leaves closed days out and counts extra days in', () => {
    const calendar = { ...DAY_SHIFT, closedDays: [4, 7], extra: [span(5, 9, 12)] };
    const other = createWorkingDays(calendar, NO_CHANGES, 8 * WEEK);
    expect(due(other, 3 * 24 + 9, inDays(1))).toBe(SATURDAY + 12);
    expect(due(other, 3 * 24 + 9, inDays(2))).toBe(NEXT_MONDAY + 24 + 16.5);
  });

  it('never promises a closing time that is over', () => {
    expect(due(days, 16.5, inDays(0))).toBe(24 + 16.5);
    expect(due(days, 20, inDays(0))).toBe(24 + 16.5);
    expect(due(days, 20, inDays(1))).toBe(24 + 16.5);
  });

  it('closes a day with the night shift that starts on it', () => {
    const nights = createWorkingDays(
      calendarOf(WEEKDAYS.map((day) => span(day, 22, 30))),
      NO_CHANGES,
      8 * WEEK,
    );
    expect(due(nights, 9, inDays(0))).toBe(30);
    expect(due(nights, 26, inDays(0))).toBe(54);
    expect(due(nights, FRIDAY + 26, inDays(0))).toBe(NEXT_MONDAY + 30);
  });

  it('closes each midnight where somebody is there day and night', () => {
    const always = createWorkingDays(calendarOf([{ fromHour: 0, toHour: 168 }]), NO_CHANGES, 8 * WEEK);
    expect(due(always, 9, inDays(0))).toBe(24);
    expect(due(always, 9, inDays(8))).toBe(9 * 24);
  });

  it('takes a window longer than a day for one working day in each 24 hours begun', () => {
    const long = createWorkingDays(calendarOf([{ fromHour: 6, toHour: FRIDAY + 22 }]), NO_CHANGES, 8 * WEEK);
    expect(due(long, 9, inDays(0))).toBe(30);
    expect(due(long, FRIDAY + 9, inDays(0))).toBe(FRIDAY + 22);
    expect(due(long, SATURDAY, inDays(0))).toBe(NEXT_MONDAY + 30);
  });

  it('reads days, cut-off and closing time by the clock on the wall', () => {
    // Berlin, 30 March 2025 (IANA time zone database): from Sunday 02:00 on the wall is an hour ahead.
    const spring = createLocalTime([{ atHours: 146, localMinusElapsedHours: 1 }]);
    const after = createWorkingDays(DAY_SHIFT, spring, 8 * WEEK);
    expect(due(after, FRIDAY + 9, inDays(1))).toBe(NEXT_MONDAY + 15.5);
    expect(due(after, NEXT_MONDAY + 13 - 1e-6, inDays(0, 14))).toBe(NEXT_MONDAY + 15.5);
    expect(due(after, NEXT_MONDAY + 13, inDays(0, 14))).toBe(NEXT_MONDAY + 24 + 15.5);
    // Elapsed 23:30 on Sunday is Monday 00:30 on the wall.
    expect(due(after, NEXT_MONDAY - 0.5, inDays(1))).toBe(NEXT_MONDAY + 24 + 15.5);
  });

  it('promises by the clock, or not at all, when the rule says so', () => {
    expect(due(days, 9.25, { kind: 'clock', hours: 36 })).toBe(45.25);
    expect(due(days, 9, { kind: 'none' })).toBe(Number.POSITIVE_INFINITY);
  });

  it('reaches as far as it is asked, whatever it was made for', () => {
    const short = createWorkingDays(DAY_SHIFT, NO_CHANGES, 0);
    expect(due(short, 9, inDays(500))).toBe(100 * 168 + 16.5);
    expect(due(short, 300 * 168 + 9, inDays(1))).toBe(300 * 168 + 24 + 16.5);
  });

  it('gives no promise when no working day comes any more', () => {
    const never = createWorkingDays(calendarOf([]), NO_CHANGES, WEEK);
    expect(due(never, 9, inDays(0))).toBe(Number.POSITIVE_INFINITY);
    const once = createWorkingDays(calendarOf([], { extra: [span(30, 9, 12)] }), NO_CHANGES, WEEK);
    expect(due(once, 9, inDays(0))).toBe(30 * 24 + 12);
    expect(due(once, 9, inDays(1))).toBe(Number.POSITIVE_INFINITY);
  });

  it('agrees with counting days one by one', () => {
    const closed = fc.uniqueArray(fc.integer({ min: 0, max: 40 }), { maxLength: 10 });
    const minute = fc.integer({ min: 0, max: 28 * 1440 - 1 });
    const cutOff = fc.option(fc.integer({ min: 1, max: 24 }));
    fc.assert(
      fc.property(
        closed,
        minute,
        fc.integer({ min: 0, max: 12 }),
        cutOff,
        (closedDays, at, n, cutOffHour) => {
          const isWorking = (day: number): boolean => day % 7 < 5 && !closedDays.includes(day);
          let day = Math.floor(at / 1440);
          if (!isWorking(day) || (cutOffHour !== null && at - day * 1440 >= cutOffHour * 60)) {
            do day++;
            while (!isWorking(day));
          }
          for (let left = n; left > 0; left--) {
            do day++;
            while (!isWorking(day));
          }
          while (!isWorking(day) || (day * 24 + 16.5) * 60 <= at) day++;
          const made = createWorkingDays({ ...DAY_SHIFT, closedDays }, NO_CHANGES, 4 * WEEK);
          expect(due(made, at / 60, inDays(n, cutOffHour))).toBe(day * 24 + 16.5);
        },
      ),
      { seed: 1, numRuns: 1000 },
    );
  });
});
