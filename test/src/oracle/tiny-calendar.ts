import type { ClockChange, WorkingCalendar } from '@buildweek/model';
import fc from 'fast-check';
import { onDays } from './small-lab.ts';

/** Calendars with breaks, nights, adjacent windows, closing days and additional hours. */

const SHAPES: readonly (readonly (readonly [string, string])[])[] = [
  [['08:00', '16:00']],
  [
    ['08:00', '12:00'],
    ['12:30', '16:30'],
  ],
  [
    ['07:00', '11:00'],
    ['11:00', '13:00'],
    ['16:00', '19:00'],
  ],
  [['22:00', '06:00']],
  [['00:00', '24:00']],
  [
    ['06:00', '10:00'],
    ['12:15', '14:00'],
    ['16:00', '20:00'],
  ],
];

const DAYS: readonly (readonly number[])[] = [
  [0, 1, 2, 3, 4],
  [0, 1, 2, 3, 4, 5, 6],
  [0, 2, 4],
  [1, 2, 3, 6],
];

export function tinyCalendar(name: string): fc.Arbitrary<WorkingCalendar> {
  return fc.record({
    name: fc.constant(name),
    weekly: fc
      .tuple(fc.constantFrom(...SHAPES), fc.constantFrom(...DAYS))
      .map(([windows, days]) => onDays(days, ...windows)),
    closedDays: fc
      .uniqueArray(fc.integer({ min: 0, max: 8 }), { maxLength: 2 })
      .map((days) => days.sort((one, other) => one - other)),
    extra: fc.constantFrom([], [], [{ fromHour: 30, toHour: 34 }], [{ fromHour: 64, toHour: 70 }]),
  });
}

/** No change, or one that takes an hour from the second night, or one that gives one. */
export const tinyClockChanges: fc.Arbitrary<readonly ClockChange[]> = fc.constantFrom(
  [],
  [],
  [],
  [{ atHours: 26, localMinusElapsedHours: 1 }],
  [{ atHours: 27, localMinusElapsedHours: -1 }],
);
