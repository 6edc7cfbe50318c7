import { createLocalTime, MILLISECONDS_PER_WEEK, windowsOf } from '@buildweek/core';
import type { Lab } from '@buildweek/model';
import type { LabMoments } from './lab-moments.ts';

const WEEKS_AHEAD = 12;

/** The end of today's working hours, and when they begin again; elapsed milliseconds. */
export interface DayEnd {
  readonly closes: number;
  readonly opens: number;
}

/**
 * @returns null when the lab does not close, or does not open again within twelve weeks
 */
export function dayEndOf(lab: Lab, moments: LabMoments): DayEnd | null {
  const calendar = lab.calendars.find(({ name }) => name === lab.labCalendar);
  if (calendar === undefined) return null;
  // A moment that is a closing time belongs to the day that is over.
  const closes = moments.closingFrom(moments.now + 1);
  const horizon = moments.now + WEEKS_AHEAD * MILLISECONDS_PER_WEEK;
  const { starts } = windowsOf(calendar, createLocalTime(lab.clockChanges), horizon);
  const opens = starts.find((start) => start >= closes);
  return opens === undefined || !Number.isFinite(closes) ? null : { closes, opens };
}
