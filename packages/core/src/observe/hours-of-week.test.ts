import { describe, expect, it } from 'vitest';
import { MILLISECONDS_PER_HOUR, MILLISECONDS_PER_WEEK } from '../kernel/clock.ts';
import { createLocalTime } from '../kernel/local-time.ts';
import { HoursOfWeek } from './hours-of-week.ts';
import { MeasuredWindow } from './window.ts';

describe('HoursOfWeek', () => {
  it('averages a constant to itself in every hour, also over a week in which the clock jumps', () => {
    const window = new MeasuredWindow(0, 3 * MILLISECONDS_PER_WEEK, 3);
    // Spring forward in the first week, back again in the third.
    const localTime = createLocalTime([
      { atHours: 145, localMinusElapsedHours: 1 },
      { atHours: 480, localMinusElapsedHours: 0 },
    ]);
    const hours = new HoursOfWeek(window, localTime);
    hours.add(0, 4 * MILLISECONDS_PER_WEEK, 2);
    for (const average of hours.averages()) expect(average).toBeCloseTo(2, 12);
  });

  it('gives an hour its share of the weeks in which something was there', () => {
    const window = new MeasuredWindow(MILLISECONDS_PER_WEEK, 3 * MILLISECONDS_PER_WEEK, 2);
    const hours = new HoursOfWeek(window, createLocalTime([]));
    hours.add(0, MILLISECONDS_PER_WEEK + MILLISECONDS_PER_HOUR / 2, 1);
    expect(hours.averages()[0]).toBe(0.25);
    expect(hours.averages()[1]).toBe(0);
  });
});
