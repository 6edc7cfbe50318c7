import type { WorkingCalendar } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import { coversWholeWeek, spansOf } from './calendar-spans.ts';
import { MILLISECONDS_PER_HOUR as HOUR } from './clock.ts';

const calendar: WorkingCalendar = {
  name: 'nights',
  weekly: [
    { fromHour: 22, toHour: 30 },
    { fromHour: 166, toHour: 174 },
  ],
  closedDays: [7],
  extra: [{ fromHour: 50, toHour: 52 }],
};

describe('spansOf', () => {
  it('writes out the week before the plan too, drops what starts on a closed day, and sorts', () => {
    const hours = spansOf(calendar, 2).map((span) => [span.from / HOUR, span.to / HOUR]);
    expect(hours).toEqual([
      [-146, -138],
      [-2, 6],
      [22, 30],
      [50, 52],
      [166, 174],
      [334, 342],
    ]);
  });
});

describe('coversWholeWeek', () => {
  const covers = (...weekly: [number, number][]): boolean =>
    coversWholeWeek({
      ...calendar,
      weekly: weekly.map(([fromHour, toHour]) => ({ fromHour, toHour })),
    });

  it('sees that no hour of the week is left out', () => {
    expect(covers([0, 168])).toBe(true);
    expect(covers([20, 100], [100, 188])).toBe(true);
    expect(covers([0, 90], [60, 168])).toBe(true);
  });

  it('sees a gap in the middle, at the beginning and at the end', () => {
    expect(covers([0, 100], [100.5, 168])).toBe(false);
    expect(covers([1, 168])).toBe(false);
    expect(covers([0, 167])).toBe(false);
    expect(covers()).toBe(false);
  });
});
