import { createLocalTime, MILLISECONDS_PER_HOUR, MILLISECONDS_PER_WEEK, windowsOf } from '@buildweek/core';
import type { Lab } from '@buildweek/model';
import type { PromiseAnswer } from '@buildweek/results';
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

/**
 * When the lab is closed, hours from now.
 *
 * @param untilHour hours from now
 */
export function closedSpans(lab: Lab, moments: LabMoments, untilHour: number): PromiseAnswer['closed'] {
  const calendar = lab.calendars.find(({ name }) => name === lab.labCalendar);
  if (calendar === undefined) return [];
  const end = moments.now + untilHour * MILLISECONDS_PER_HOUR;
  const { starts, ends } = windowsOf(calendar, createLocalTime(lab.clockChanges), end);
  const hours = (time: number): number => (time - moments.now) / MILLISECONDS_PER_HOUR;
  const spans: { fromHour: number; toHour: number }[] = [];
  let closedFrom = moments.now;
  starts.forEach((start, index) => {
    if (start > closedFrom) spans.push({ fromHour: hours(closedFrom), toHour: hours(Math.min(start, end)) });
    closedFrom = Math.max(closedFrom, ends[index] as number);
  });
  if (closedFrom < end) spans.push({ fromHour: hours(closedFrom), toHour: hours(end) });
  return spans.filter(({ fromHour, toHour }) => toHour > fromHour);
}

/** Hours from now up to which the dates of an answer reach. */
export function reachOf(request: PromiseAnswer['request'], openJobs: PromiseAnswer['openJobs']): number {
  const dates = [...(request?.ways ?? []), ...(request?.moves ?? []), ...(openJobs ?? [])].flatMap(
    (one) => one.dates,
  );
  const dues = [...(openJobs ?? []), ...(request?.ways ?? [])].flatMap(({ due }) => due?.hours ?? []);
  return Math.max(24, ...dates.flatMap(({ promise }) => promise?.hours ?? []), ...dues);
}
