import { HOURS_PER_WEEK } from '@buildweek/core';
import type { ArrivalPattern, DemandStream, Lab } from '@buildweek/model';

const DAYS_PER_WEEK = 7;
const WEEKS_PER_MONTH = 365.25 / 12 / DAYS_PER_WEEK;

/**
 * The same lab with its plan starting so many weeks earlier. The weeks that a study leaves out lie before the
 * start that the scenario states: the measured weeks are then the ones that the reader means, with their closing
 * days, leave and dated jobs at their dates.
 *
 * @param weeks whole weeks, 0 or more
 */
export function startEarlier(lab: Lab, weeks: number): Lab {
  if (weeks === 0) return lab;
  const hours = weeks * HOURS_PER_WEEK;
  const later = <T extends { readonly fromHour: number; readonly toHour: number }>(span: T): T => ({
    ...span,
    fromHour: span.fromHour + hours,
    toHour: span.toHour + hours,
  });
  return {
    ...lab,
    clockChanges: lab.clockChanges.map((change) => ({ ...change, atHours: change.atHours + hours })),
    calendars: lab.calendars.map((calendar) => ({
      ...calendar,
      closedDays: calendar.closedDays.map((day) => day + weeks * DAYS_PER_WEEK),
      extra: calendar.extra.map(later),
    })),
    people: lab.people.map((group) => ({ ...group, leave: group.leave.map(later) })),
    demand: lab.demand.map((stream) => ({ ...stream, arrivals: earlier(stream, weeks) })),
  };
}

/** Demand that grows reaches its stated level at the stated start, so before it there is less. */
function earlier({ arrivals }: DemandStream, weeks: number): ArrivalPattern {
  switch (arrivals.kind) {
    case 'poisson':
      return {
        ...arrivals,
        perWeek: arrivals.perWeek * (1 + arrivals.growthPerMonth) ** (-weeks / WEEKS_PER_MONTH),
      };
    case 'dated':
      return {
        ...arrivals,
        jobs: arrivals.jobs.map((job) => ({ ...job, atHour: job.atHour + weeks * HOURS_PER_WEEK })),
      };
    case 'renewal':
    case 'kept in the lab':
      return arrivals;
  }
}
