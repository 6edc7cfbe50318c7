import { HOURS_PER_WEEK } from '@buildweek/core';
import type { Lab, PeopleGroup } from '@buildweek/model';

/** 365.25 days. */
export const WEEKS_PER_YEAR = 365.25 / 7;

/**
 * Hours for which one person of a group is paid from the start of the plan on: those of the weekly roster, and
 * additional windows that begin by then. Closing days, leave and absence take nothing off: who is employed is paid on
 * these days as well.
 * @throws Error when the lab does not know the hours of the group
 */
export function paidHours(lab: Lab, group: PeopleGroup, weeks: number): number {
  const calendar = lab.calendars.find((candidate) => candidate.name === group.calendar);
  if (calendar === undefined) throw new Error(`The lab has no hours "${group.calendar}".`);
  const length = (spans: readonly { fromHour: number; toHour: number }[]): number =>
    spans.reduce((sum, span) => sum + span.toHour - span.fromHour, 0);
  const additional = calendar.extra.filter(
    (span) => span.fromHour >= 0 && span.fromHour < weeks * HOURS_PER_WEEK,
  );
  return weeks * length(calendar.weekly) + length(additional);
}
