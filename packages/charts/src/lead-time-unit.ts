import type { Results } from '@buildweek/results';
import { DAYS, HOURS_PER_DAY, type Unit } from './format.ts';

const HOURS_IN_FULL: Unit = { size: 1, one: 'hour', many: 'hours', leastDecimals: 1 };

/**
 * The unit in which the lead times of a lab are told: days of 24 hours by the clock, or hours when an average job
 * takes less than a day.
 */
export function leadTimeUnit(results: Results): Unit {
  const all = results.jobs.find((one) => one.part === null && one.priority === 'all')?.meanLeadTime;
  return all?.kind === 'estimate' && all.value < HOURS_PER_DAY ? HOURS_IN_FULL : DAYS;
}
