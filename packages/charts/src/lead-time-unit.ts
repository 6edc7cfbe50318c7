import { type JobClass, toldInDays } from '@buildweek/results';
import { DAYS, type Unit } from './format.ts';

const HOURS_IN_FULL: Unit = { size: 1, one: 'hour', many: 'hours', leastDecimals: 1 };

/**
 * The unit in which the lead times of a lab are told: days of 24 hours by the clock, or hours when an average job
 * takes less than a day.
 */
export function leadTimeUnit({ jobs }: { readonly jobs: readonly JobClass[] }): Unit {
  return toldInDays(jobs) ? DAYS : HOURS_IN_FULL;
}
