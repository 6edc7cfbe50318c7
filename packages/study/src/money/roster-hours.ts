import { HOURS_PER_WEEK } from '@buildweek/core';
import type { HourSpan, Lab, PeopleGroup } from '@buildweek/model';

/** 365.25 days. */
export const WEEKS_PER_YEAR = 365.25 / 7;

/**
 * Hours for which one person of a group is paid: those of the weekly roster, and additional windows that begin within
 * the weeks. Closing days, leave and absence take nothing off: who is employed is paid on these days as well.
 * @param fromHour hours of the plan from which the weeks count
 * @throws Error when the lab does not know the hours of the group
 */
export function paidHours(lab: Lab, group: PeopleGroup, weeks: number, fromHour = 0): number {
  const calendar = lab.calendars.find((candidate) => candidate.name === group.calendar);
  if (calendar === undefined) throw new Error(`The lab has no hours "${group.calendar}".`);
  const toHour = fromHour + weeks * HOURS_PER_WEEK;
  const additional = calendar.extra.filter((span) => span.fromHour >= fromHour && span.fromHour < toHour);
  return weeks * hoursOf(calendar.weekly) + hoursOf(additional);
}

function hoursOf(spans: readonly HourSpan[]): number {
  return spans.reduce((sum, span) => sum + span.toHour - span.fromHour, 0);
}
