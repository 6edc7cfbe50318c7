import type { ClockChange, HourSpan, WorkingCalendar } from '@buildweek/model';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MILLISECONDS_PER_HOUR as HOUR, MILLISECONDS_PER_WEEK as WEEK } from './clock.ts';
import { createLocalTime } from './local-time.ts';
import { closings, hoursWithin, union, type WorkingWindows, windowsOf } from './working-windows.ts';

const NO_CHANGES = createLocalTime([]);
const WEEKDAYS = [0, 1, 2, 3, 4];

const span = (day: number, from: number, to: number): HourSpan => ({
  fromHour: day * 24 + from,
  toHour: day * 24 + to,
});

function calendarOf(weekly: readonly HourSpan[], more: Partial<WorkingCalendar> = {}): WorkingCalendar {
  return { name: 'day', weekly, closedDays: [], extra: [], ...more };
}

const DAY_SHIFT = calendarOf(WEEKDAYS.map((day) => span(day, 8, 16)));

/** Windows as pairs of hours. */
function pairsOf({ starts, ends }: WorkingWindows): [number, number][] {
  return Array.from(starts, (start, index) => [start / HOUR, (ends[index] ?? Number.NaN) / HOUR]);
}

function pairs(
  calendar: WorkingCalendar,
  weeks: number,
  changes: readonly ClockChange[] = [],
): [number, number][] {
  return pairsOf(windowsOf(calendar, createLocalTime(changes), weeks * WEEK));
}

describe('windowsOf', () => {
  it('repeats the week up to the horizon', () => {
    expect(pairs(calendarOf([span(0, 8, 16), span(4, 9, 12)]), 2)).toEqual([
      [8, 16],
      [105, 108],
      [176, 184],
      [273, 276],
    ]);
  });

  it('keeps a lunch break as a gap and joins windows that touch or overlap', () => {
    // Case C03 of the collected checks has 08:00-12:00 and 12:30-16:30.
    expect(pairs(calendarOf([span(0, 8, 12), span(0, 12.5, 16.5)]), 1)).toEqual([
      [8, 12],
      [12.5, 16.5],
    ]);
    expect(pairs(calendarOf([span(0, 8, 12), span(0, 12, 16.5), span(0, 16, 18)]), 1)).toEqual([[8, 18]]);
  });

  it('carries a night shift over midnight, and over the end of the week into the next', () => {
    // Case C04 of the collected checks: Monday to Friday 22:00-06:00; Friday night ends on Saturday at 06:00.
    const nights = calendarOf(WEEKDAYS.map((day) => span(day, 22, 30)));
    expect(pairs(nights, 1).at(-1)).toEqual([4 * 24 + 22, 5 * 24 + 6]);
    const sundayNight = calendarOf([span(6, 22, 30)]);
    expect(pairs(sundayNight, 2)).toEqual([
      [0, 6],
      [166, 174],
      [334, 342],
    ]);
  });

  it('leaves out windows that start on a closed day, and only those', () => {
    // Case C05 of the collected checks: the first Monday is a public holiday.
    expect(pairs({ ...DAY_SHIFT, closedDays: [0] }, 1).at(0)).toEqual([32, 40]);
    const nights = calendarOf(
      WEEKDAYS.map((day) => span(day, 22, 30)),
      { closedDays: [1] },
    );
    expect(pairs(nights, 1).slice(0, 2)).toEqual([
      [22, 30],
      [70, 78],
    ]);
  });

  it('adds extra windows whatever the day', () => {
    const calendar = calendarOf([span(0, 8, 16)], {
      closedDays: [5],
      extra: [span(5, 9, 12), span(0, 16, 18)],
    });
    expect(pairs(calendar, 1)).toEqual([
      [8, 18],
      [129, 132],
    ]);
  });

  it('makes a shift that crosses a clock change an hour shorter or longer', () => {
    // Case C07 of the collected checks (IANA time zone database): 22:00-06:00 from Saturday on in Berlin has 7
    // hours at the change of 30 March 2025 and 9 at that of 26 October 2025; plans start on the Monday before.
    const saturdayNight = calendarOf([span(5, 22, 30)]);
    const [spring] = pairs(saturdayNight, 1, [{ atHours: 146, localMinusElapsedHours: 1 }]);
    expect(spring).toEqual([142, 149]);
    const [autumn] = pairs(saturdayNight, 1, [{ atHours: 147, localMinusElapsedHours: -1 }]);
    expect(autumn).toEqual([142, 151]);
    // New York, 9 March and 2 November 2025: by the same rule.
    expect(pairs(saturdayNight, 1, [{ atHours: 146, localMinusElapsedHours: -1 }])[0]).toEqual([142, 151]);
  });

  it('reads the hours after a clock change by the wall', () => {
    const changed = pairs(DAY_SHIFT, 2, [{ atHours: 146, localMinusElapsedHours: 1 }]);
    expect(changed[0]).toEqual([8, 16]);
    expect(changed[5]).toEqual([175, 183]);
  });

  it('drops a window that lies in the hour that the clock skips only as far as nothing is left of it', () => {
    const change = { atHours: 146, localMinusElapsedHours: 1 };
    expect(pairs(calendarOf([span(6, 2.5, 3.25)]), 1, [change])).toEqual([]);
    expect(pairs(calendarOf([span(6, 2.5, 4)]), 1, [change])).toEqual([[146.5, 147]]);
  });

  it('gives one window without end for a calendar that is open day and night', () => {
    const forGood = [[0, Number.POSITIVE_INFINITY]];
    const change = { atHours: 146, localMinusElapsedHours: 1 };
    expect(pairs(calendarOf([{ fromHour: 0, toHour: 168 }]), 2)).toEqual(forGood);
    expect(pairs(calendarOf([{ fromHour: 0, toHour: 168 }]), 2, [change])).toEqual(forGood);
    const shifts = [0, 1, 2, 3, 4, 5, 6].flatMap((day) => [
      span(day, 6, 14),
      span(day, 14, 22),
      span(day, 22, 30),
    ]);
    expect(pairs(calendarOf(shifts), 2, [change])).toEqual(forGood);
    expect(pairs(calendarOf([{ fromHour: 6, toHour: 174 }]), 2)).toEqual(forGood);
  });

  it('goes on without end behind the last closed day of a calendar that is open day and night', () => {
    const days = [0, 1, 2, 3, 4, 5, 6].map((day) => span(day, 0, 24));
    expect(pairs(calendarOf(days, { closedDays: [2, 9] }), 3)).toEqual([
      [0, 48],
      [72, 216],
      [240, Number.POSITIVE_INFINITY],
    ]);
    // A closed day beyond the horizon still ends the window that meets the horizon.
    expect(pairs(calendarOf(days, { closedDays: [8] }), 1)).toEqual([[0, 192]]);
  });

  it('gives a window that meets the horizon in full', () => {
    expect(pairsOf(windowsOf(DAY_SHIFT, NO_CHANGES, 10 * HOUR))).toEqual([[8, 16]]);
    expect(pairsOf(windowsOf(DAY_SHIFT, NO_CHANGES, 8 * HOUR))).toEqual([]);
  });

  it('agrees with a look at every half hour', () => {
    const halfHours = (max: number): fc.Arbitrary<number> =>
      fc.integer({ min: 0, max }).map((half) => half / 2);
    const weeklySpan = fc
      .tuple(halfHours(167.5 * 2), halfHours(60))
      .map(([fromHour, length]): HourSpan => ({ fromHour, toHour: fromHour + length }));
    const extraSpan = fc
      .tuple(halfHours(3 * 336), halfHours(40))
      .map(([fromHour, length]): HourSpan => ({ fromHour, toHour: fromHour + length }));
    fc.assert(
      fc.property(
        fc.array(weeklySpan, { maxLength: 8 }),
        fc.array(fc.integer({ min: 0, max: 30 }), { maxLength: 4 }),
        fc.array(extraSpan, { maxLength: 3 }),
        (weekly, closedDays, extra) => {
          const calendar = calendarOf(weekly, { closedDays, extra });
          const horizonHours = 3 * 168;
          const windows = windowsOf(calendar, NO_CHANGES, horizonHours * HOUR);
          const open = (hour: number): boolean =>
            extra.some(({ fromHour, toHour }) => fromHour <= hour && hour < toHour) ||
            [-1, 0, 1, 2].some((week) =>
              weekly.some(
                ({ fromHour, toHour }) =>
                  !closedDays.includes(Math.floor((fromHour + week * 168) / 24)) &&
                  fromHour + week * 168 <= hour &&
                  hour < toHour + week * 168,
              ),
            );
          let openHours = 0;
          for (let hour = 0; hour < horizonHours; hour += 0.5) {
            expect(windows.contains(hour * HOUR), `hour ${hour}`).toBe(open(hour));
            if (open(hour)) openHours += 0.5;
          }
          expect(hoursWithin(windows, 0, horizonHours * HOUR)).toBe(openHours);
          for (let index = 0; index < windows.length; index++) {
            const start = windows.starts[index] ?? Number.NaN;
            expect(windows.ends[index]).toBeGreaterThan(start);
            expect(start).toBeGreaterThan(index === 0 ? -1 : (windows.ends[index - 1] ?? Number.NaN));
          }
        },
      ),
      { seed: 1, numRuns: 100 },
    );
  });
});

describe('WorkingWindows', () => {
  it('finds the window that contains a time, its start included and its end not, or else the next one', () => {
    const windows = windowsOf(DAY_SHIFT, NO_CHANGES, WEEK);
    expect(windows.length).toBe(5);
    for (const [hour, index] of [
      [0, 0],
      [8, 0],
      [15.99, 0],
      [16, 1],
      [31, 1],
      [110, 4],
      [112, 5],
      [1000, 5],
    ] as const) {
      expect(windows.indexAt(hour * HOUR), `hour ${hour}`).toBe(index);
    }
    expect(windows.contains(8 * HOUR)).toBe(true);
    expect(windows.contains(16 * HOUR)).toBe(false);
    expect(windows.contains(112 * HOUR)).toBe(false);
  });
});

describe('union', () => {
  it('is there when anybody is', () => {
    const evening = calendarOf([span(0, 15, 20), span(5, 9, 12)]);
    const both = union([DAY_SHIFT, evening].map((calendar) => windowsOf(calendar, NO_CHANGES, WEEK)));
    expect(pairsOf(both).slice(0, 2)).toEqual([
      [8, 20],
      [32, 40],
    ]);
    expect(pairsOf(both).at(-1)).toEqual([129, 132]);
    expect(union([]).length).toBe(0);
  });
});

describe('closings', () => {
  it('are the ends of windows that a gap longer than the least one follows, and the last end', () => {
    const calendar = calendarOf([span(0, 8, 12), span(0, 12.5, 16), span(0, 18, 20), span(1, 8, 12)]);
    const windows = windowsOf(calendar, NO_CHANGES, WEEK);
    expect(closings(windows, 2 * HOUR)).toEqual([20 * HOUR, 36 * HOUR]);
    expect(closings(windows, 2 * HOUR - 1)).toEqual([16 * HOUR, 20 * HOUR, 36 * HOUR]);
  });

  it('never come for a calendar that is open day and night', () => {
    const windows = windowsOf(calendarOf([{ fromHour: 0, toHour: 168 }]), NO_CHANGES, WEEK);
    expect(closings(windows, 0)).toEqual([]);
  });
});

describe('hoursWithin', () => {
  it('counts working hours across a weekend and over a year', () => {
    // Case C12 of the collected checks (hand computed): Monday to Friday 08-16, plan from Monday 2025-01-06;
    // Friday 2025-01-10 15:00 to Tuesday 2025-01-14 09:00 are 10 working hours of 90 by the clock.
    const windows = windowsOf(DAY_SHIFT, NO_CHANGES, 53 * WEEK);
    const from = (4 * 24 + 15) * HOUR;
    const to = (8 * 24 + 9) * HOUR;
    expect((to - from) / HOUR).toBe(90);
    expect(hoursWithin(windows, from, to)).toBe(10);
    // The year 2025, in a plan from Monday 2024-12-30: 261 weekdays, 2088 hours.
    expect(hoursWithin(windows, 2 * 24 * HOUR, 367 * 24 * HOUR)).toBe(2088);
  });

  it('adds up over any cut', () => {
    const windows = windowsOf(DAY_SHIFT, NO_CHANGES, 4 * WEEK);
    const time = fc.integer({ min: 0, max: 4 * WEEK });
    fc.assert(
      fc.property(time, time, time, (...times) => {
        const [a = 0, b = 0, c = 0] = times.sort((first, second) => first - second);
        const parts = windows.millisecondsBefore(b) - windows.millisecondsBefore(a);
        const rest = windows.millisecondsBefore(c) - windows.millisecondsBefore(b);
        expect(parts + rest).toBe(windows.millisecondsBefore(c) - windows.millisecondsBefore(a));
        expect(parts).toBeGreaterThanOrEqual(0);
        expect(parts).toBeLessThanOrEqual(b - a);
      }),
      { seed: 2, numRuns: 500 },
    );
  });

  it('is the whole time where somebody is there for good, and nothing where nobody ever is', () => {
    const always = windowsOf(calendarOf([{ fromHour: 0, toHour: 168 }]), NO_CHANGES, WEEK);
    expect(hoursWithin(always, HOUR, 1000 * HOUR)).toBe(999);
    expect(hoursWithin(windowsOf(calendarOf([]), NO_CHANGES, WEEK), 0, WEEK)).toBe(0);
  });
});
