import type { ClockChange } from '@buildweek/model';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MILLISECONDS_PER_HOUR as HOUR } from './clock.ts';
import { createLocalTime } from './local-time.ts';

// Rules of the zones as in the IANA time zone database: Berlin changes on the last Sundays of March (02:00 to
// 03:00) and October (03:00 to 02:00), New York on the second Sunday of March and the first of November (02:00).
const BERLIN_SPRING: ClockChange = { atHours: 146, localMinusElapsedHours: 1 };
const BERLIN_AUTUMN: ClockChange = { atHours: 147, localMinusElapsedHours: -1 };
const NEW_YORK_SPRING: ClockChange = { atHours: 146, localMinusElapsedHours: 1 };
const NEW_YORK_AUTUMN: ClockChange = { atHours: 146, localMinusElapsedHours: -1 };

const hourOf = (day: number, hour: number): number => (day * 24 + hour) * HOUR;
const SATURDAY = 5;
const SUNDAY = 6;

/** Half a year of summer time in a plan that starts three months before it. */
const year: readonly ClockChange[] = [
  { atHours: 2162, localMinusElapsedHours: 1 },
  { atHours: 7202, localMinusElapsedHours: 0 },
];

describe('createLocalTime', () => {
  it('leaves a print of 16 hours as long as it is across a clock change', () => {
    // Case C07 of the collected checks (IANA time zone database). Each plan starts on the Monday before: start
    // on Saturday 16:00, end on Sunday at the wall time given there.
    for (const [change, endsAtHour] of [
      [BERLIN_SPRING, 9],
      [BERLIN_AUTUMN, 7],
      [NEW_YORK_SPRING, 9],
      [NEW_YORK_AUTUMN, 7],
    ] as const) {
      const localTime = createLocalTime([change]);
      const end = localTime.toElapsed(hourOf(SATURDAY, 16)) + 16 * HOUR;
      expect(localTime.toLocal(end)).toBe(hourOf(SUNDAY, endsAtHour));
    }
  });

  it('is elapsed time in a zone without clock changes', () => {
    const localTime = createLocalTime([]);
    expect(localTime.toElapsed(123_456)).toBe(123_456);
    expect(localTime.toLocal(123_456)).toBe(123_456);
    expect(localTime.toElapsed(-5 * HOUR)).toBe(-5 * HOUR);
    expect(localTime.nextChange(0)).toBe(Number.POSITIVE_INFINITY);
  });

  it('reads a time that the clock skips with the offset before the gap', () => {
    const localTime = createLocalTime([BERLIN_SPRING]);
    expect(localTime.toElapsed(hourOf(SUNDAY, 2.5))).toBe(146.5 * HOUR);
    expect(localTime.toLocal(146.5 * HOUR)).toBe(hourOf(SUNDAY, 3.5));
    expect(localTime.toElapsed(hourOf(SUNDAY, 2))).toBe(146 * HOUR);
    expect(localTime.toElapsed(hourOf(SUNDAY, 3))).toBe(146 * HOUR);
  });

  it('takes the first of a time that the clock shows twice', () => {
    const localTime = createLocalTime([BERLIN_AUTUMN]);
    expect(localTime.toElapsed(hourOf(SUNDAY, 2.5))).toBe(146.5 * HOUR);
    expect(localTime.toLocal(146.5 * HOUR)).toBe(hourOf(SUNDAY, 2.5));
    expect(localTime.toLocal(147.5 * HOUR)).toBe(hourOf(SUNDAY, 2.5));
    expect(localTime.toElapsed(hourOf(SUNDAY, 3))).toBe(148 * HOUR);
  });

  it('jumps at the very millisecond of the change', () => {
    const localTime = createLocalTime([BERLIN_SPRING]);
    expect(localTime.toLocal(146 * HOUR - 1)).toBe(hourOf(SUNDAY, 2) - 1);
    expect(localTime.toLocal(146 * HOUR)).toBe(hourOf(SUNDAY, 3));
    expect(localTime.nextChange(146 * HOUR - 1)).toBe(146 * HOUR);
    expect(localTime.nextChange(146 * HOUR)).toBe(Number.POSITIVE_INFINITY);
  });

  it('comes back to the elapsed time it started from, or to the first of two with the same wall time', () => {
    const localTime = createLocalTime(year);
    const secondHour = { from: 7202 * HOUR, to: 7203 * HOUR };
    fc.assert(
      fc.property(fc.integer({ min: -48 * HOUR, max: 8760 * HOUR }), (elapsed) => {
        const back = localTime.toElapsed(localTime.toLocal(elapsed));
        const isSecond = elapsed >= secondHour.from && elapsed < secondHour.to;
        expect(back).toBe(isSecond ? elapsed - HOUR : elapsed);
      }),
      { seed: 1, numRuns: 2000 },
    );
    expect(localTime.toElapsed(localTime.toLocal(7202.25 * HOUR))).toBe(7201.25 * HOUR);
  });

  it('keeps whole milliseconds whole', () => {
    const localTime = createLocalTime([{ atHours: 1 / 3, localMinusElapsedHours: 0.5 }]);
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 10 * HOUR }), (time) => {
        expect(Number.isInteger(localTime.toElapsed(time))).toBe(true);
        expect(Number.isInteger(localTime.toLocal(time))).toBe(true);
      }),
      { seed: 2 },
    );
  });

  it('refuses changes that do not ascend', () => {
    expect(() => createLocalTime([...year].reverse())).toThrow(RangeError);
  });
});
