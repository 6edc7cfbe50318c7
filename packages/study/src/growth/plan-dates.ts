import { MONTH_NAMES } from '@buildweek/results';

const MILLISECONDS_PER_DAY = 86_400_000;
const DAYS_PER_WEEK = 7;

/** First day of a month, counted from the month in which a plan starts. @param start `YYYY-MM-DD` */
function firstOfMonth(start: string, month: number): Date {
  const date = new Date(`${start}T00:00:00Z`);
  // The plan's own month begins with the plan.
  return month === 0 ? date : new Date(Date.UTC(date.getUTCFullYear(), date.getUTCMonth() + month, 1));
}

/** "2027-05". @param start of the plan, `YYYY-MM-DD` */
export function monthLabel(start: string, month: number): string {
  return firstOfMonth(start, month).toISOString().slice(0, 7);
}

/** The day by which something has to be ordered to work when a month begins, `YYYY-MM-DD`. */
export function orderDate(start: string, month: number, leadWeeks: number): string {
  const needed = firstOfMonth(start, month).getTime();
  const days = Math.ceil(leadWeeks * DAYS_PER_WEEK);
  return new Date(needed - days * MILLISECONDS_PER_DAY).toISOString().slice(0, 10);
}

/** "1 September 2027". @param date `YYYY-MM-DD` */
export function dateWords(date: string): string {
  const [year = '', month = '', day = ''] = date.split('-');
  return `${Number(day)} ${MONTH_NAMES[Number(month) - 1] ?? ''} ${year}`;
}

/** "September 2027". @param label `YYYY-MM` */
export function monthWords(label: string): string {
  const [year = '', month = ''] = label.split('-');
  return `${MONTH_NAMES[Number(month) - 1] ?? ''} ${year}`;
}
