import { MONTH_NAMES } from '@buildweek/results';

const MILLISECONDS_PER_DAY = 86_400_000;

/** First day of a measured week. */
export interface WeekDate {
  /** "29 March". */
  readonly long: string;
  /** "29 Mar". */
  readonly short: string;
}

/**
 * The day on which a week begins.
 * @param startDate first day of week 1, `2027-03-01`
 * @param week counted from 1
 * @returns null where the start is no date
 */
export function dateOfWeek(startDate: string, week: number): WeekDate | null {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(startDate) ?? [];
  if (year === undefined || month === undefined || day === undefined) return null;
  const start = Date.UTC(Number(year), Number(month) - 1, Number(day));
  const date = new Date(start + 7 * (week - 1) * MILLISECONDS_PER_DAY);
  const name = MONTH_NAMES[date.getUTCMonth()] ?? '';
  return { long: `${date.getUTCDate()} ${name}`, short: `${date.getUTCDate()} ${name.slice(0, 3)}` };
}
