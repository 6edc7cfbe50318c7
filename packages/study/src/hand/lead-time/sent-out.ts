import { meanOf } from '@buildweek/core';
import type { Lab, OutsideLeadTime } from '@buildweek/model';

/**
 * Mean hours until work that is made outside is back. Working days are spread over the week: five of them are seven
 * times 24 h.
 */
export function outsideHours(lab: Lab, leadTime: OutsideLeadTime): number {
  if (leadTime.kind === 'clock') return meanOf(leadTime.duration.distribution);
  return meanOf(leadTime.days) * (7 / workingDaysOfWeek(lab)) * 24;
}

/** Days of the week on which the lab opens, at least 1. */
export function workingDaysOfWeek(lab: Lab): number {
  const calendar = lab.calendars.find(({ name }) => name === lab.labCalendar);
  const days = new Set(calendar?.weekly.map(({ fromHour }) => Math.floor(fromHour / 24)));
  return Math.max(1, days.size);
}
