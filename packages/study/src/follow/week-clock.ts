import { MILLISECONDS_PER_HOUR, MILLISECONDS_PER_WEEK } from '@buildweek/core';
import type { Replay } from './replay.ts';

const HOURS_OF_WEEK = 168;
const DAY = 86_400_000;
/** To a hundredth of a minute. */
const DIGITS = 1e4;

/** Tells times of a replay in hours since Monday 00:00 of one week by the clock on the wall. */
export interface WeekClock {
  /** Date of that Monday, YYYY-MM-DD. */
  readonly monday: string;
  readonly hours: number;
  /** @param time milliseconds since the stated start of the plan */
  hour(time: number): number;
  /** The same, cut to the week. */
  within(time: number): number;
}

/** @param week from 1; @param startDate the Monday on which the plan starts, YYYY-MM-DD */
export function clockOfWeek({ localTime }: Replay, week: number, startDate: string): WeekClock {
  const start = (week - 1) * MILLISECONDS_PER_WEEK;
  const hour = (time: number): number =>
    Math.round(((localTime.toLocal(time) - start) / MILLISECONDS_PER_HOUR) * DIGITS) / DIGITS;
  return {
    monday: new Date(Date.parse(`${startDate}T00:00Z`) + (week - 1) * 7 * DAY).toISOString().slice(0, 10),
    hours: HOURS_OF_WEEK,
    hour,
    within: (time) => Math.min(HOURS_OF_WEEK, Math.max(0, hour(time))),
  };
}
