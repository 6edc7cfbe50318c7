import {
  createLocalTime,
  HOURS_PER_WEEK,
  hoursWithin,
  MILLISECONDS_PER_HOUR,
  MILLISECONDS_PER_WEEK,
  union,
  type WorkingWindows,
  windowsOf,
} from '@buildweek/core';
import type { Lab, PeopleGroup } from '@buildweek/model';
import type { WeekRange } from './expected-demand.ts';

/** Hours on duty of the whole group in an average week of the range, without its dated leave. */
export function hoursOnDuty(lab: Lab, group: PeopleGroup, range: WeekRange): number {
  const { windows, from, to } = windowsIn(lab, group.calendar, range);
  let onLeave = 0;
  for (const { person, fromHour, toHour } of group.leave) {
    // A plan with fewer people than the scenario has no leave of those who are not there.
    if (person > group.count) continue;
    windows.starts.forEach((start, index) => {
      const isLeave = start >= fromHour * MILLISECONDS_PER_HOUR && start < toHour * MILLISECONDS_PER_HOUR;
      const end = Math.min(windows.ends[index] ?? start, to);
      if (isLeave) onLeave += Math.max(0, end - Math.max(start, from)) / MILLISECONDS_PER_HOUR;
    });
  }
  return Math.max(0, group.count * hoursWithin(windows, from, to) - onLeave) / range.weeks;
}

/** Hours in which equipment is there in an average week of the range; null: day and night. */
export function hoursThere(lab: Lab, calendar: string | null, range: WeekRange): number {
  if (calendar === null) return HOURS_PER_WEEK;
  const { windows, from, to } = windowsIn(lab, calendar, range);
  return hoursWithin(windows, from, to) / range.weeks;
}

/** Hours of an average week of the range in which at least one of these calendars is open. */
export function hoursOfAny(lab: Lab, calendars: readonly string[], range: WeekRange): number {
  const found = [...new Set(calendars)].map((name) => windowsIn(lab, name, range));
  const [first] = found;
  if (first === undefined) return 0;
  return hoursWithin(union(found.map(({ windows }) => windows)), first.from, first.to) / range.weeks;
}

function windowsIn(
  lab: Lab,
  name: string,
  range: WeekRange,
): { readonly windows: WorkingWindows; readonly from: number; readonly to: number } {
  const calendar = lab.calendars.find((candidate) => candidate.name === name);
  if (calendar === undefined) throw new Error(`The lab has no calendar "${name}".`);
  const from = range.fromWeek * MILLISECONDS_PER_WEEK;
  const to = from + range.weeks * MILLISECONDS_PER_WEEK;
  return { windows: windowsOf(calendar, createLocalTime(lab.clockChanges), to), from, to };
}
