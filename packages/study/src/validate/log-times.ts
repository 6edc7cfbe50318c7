import type { CivilTime } from '@buildweek/records';

export const MILLISECONDS_PER_HOUR = 3_600_000;
export const MILLISECONDS_PER_DAY = 24 * MILLISECONDS_PER_HOUR;
export const MILLISECONDS_PER_WEEK = 7 * MILLISECONDS_PER_DAY;
/** 1970-01-01 was a Thursday. */
const FIRST_MONDAY = 4 * MILLISECONDS_PER_DAY;

/** The Monday 00:00 at or before a moment. */
export function mondayBefore(time: CivilTime): CivilTime {
  return Math.floor((time - FIRST_MONDAY) / MILLISECONDS_PER_WEEK) * MILLISECONDS_PER_WEEK + FIRST_MONDAY;
}

/** The Monday 00:00 at or after a moment. */
export function mondayAfter(time: CivilTime): CivilTime {
  return Math.ceil((time - FIRST_MONDAY) / MILLISECONDS_PER_WEEK) * MILLISECONDS_PER_WEEK + FIRST_MONDAY;
}

/** `2026-02-16`. */
export function dayText(time: CivilTime): string {
  return new Date(time).toISOString().slice(0, 10);
}
