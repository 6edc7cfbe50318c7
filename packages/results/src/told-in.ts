import type { JobClass } from './measures.ts';

const HOURS_PER_DAY = 24;
const WEEKS_PER_QUARTER = 13;

/** Whether lead times are told in days of 24 hours by the clock; else in hours, where an average job takes less. */
export function toldInDays(jobs: readonly JobClass[]): boolean {
  const mean = jobs.find((one) => one.part === null && one.priority === 'all')?.meanLeadTime;
  return mean?.kind !== 'estimate' || mean.value >= HOURS_PER_DAY;
}

/** The one word for the measured weeks: "quarter", or "period of 6 weeks". */
export function periodName(weeks: number): string {
  if (weeks === WEEKS_PER_QUARTER) return 'quarter';
  return `period of ${weeks === 1 ? '1 week' : `${weeks} weeks`}`;
}
