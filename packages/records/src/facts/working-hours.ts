import type { CivilTime, LoggedJob } from '../logged-jobs.ts';

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
/** 1970-01-01 was a Thursday; weeks begin on Monday. */
const MONDAY = 4 * DAY;
/** Share of finishes that may lie outside at either end: an overrun, a slip of the pen. */
const OUTSIDE = 0.02;
/** A day of the week on which less than this share of an average day is finished is no working day. */
const RARE_DAY = 0.2;
/** When times lie all over the clock, somebody is always there, or nobody writes down when it was: nothing is told. */
const LONGEST_DAY = 16;
/** When all is written down within a few hours, that is when somebody writes, not when somebody works. */
const SHORTEST_DAY = 4;
/** Fewer finishes with a clock say nothing. */
const FEWEST = 30;

/** When somebody is in, as far as finishes and hand work tell. */
export interface WorkingHours {
  /** From 0 for Monday. */
  readonly days: readonly number[];
  /** Whole hours of the day. */
  readonly fromHour: number;
  readonly toHour: number;
  /** Times that were counted. */
  readonly counted: number;
}

/** Working days and hours from the times at which jobs were finished by somebody; null where they tell none. */
export function workingHours(jobs: readonly LoggedJob[]): WorkingHours | null {
  const times = jobs.flatMap((job) => [
    ...(job.finished !== null && job.finishedHasClock ? [job.finished] : []),
    ...job.stages.filter(({ isWork }) => isWork).flatMap(({ start }) => (start === null ? [] : [start])),
  ]);
  if (times.length < FEWEST) return null;
  const perDay = new Array<number>(7).fill(0);
  for (const time of times) perDay[weekdayOf(time)] = (perDay[weekdayOf(time)] ?? 0) + 1;
  const average = times.length / 5;
  const days = perDay.flatMap((count, day) => (count >= RARE_DAY * average ? [day] : []));
  const clocks = times.map((time) => (time % DAY) / HOUR).sort((a, b) => a - b);
  const cut = Math.floor(OUTSIDE * clocks.length);
  const first = clocks[cut] ?? 0;
  const last = clocks[clocks.length - 1 - cut] ?? 24;
  const fromHour = Math.floor(first);
  const toHour = Math.min(24, Math.ceil(last));
  const length = toHour - fromHour;
  return length > LONGEST_DAY || length < SHORTEST_DAY
    ? null
    : { days, fromHour, toHour, counted: times.length };
}

/** From 0 for Monday. */
function weekdayOf(time: CivilTime): number {
  return Math.floor((((time - MONDAY) % (7 * DAY)) + 7 * DAY) / DAY) % 7;
}

/**
 * Working days from one time to another, the first day not counted.
 * @param days of the week that are worked, from 0 for Monday
 */
export function workingDaysBetween(from: CivilTime, to: CivilTime, days: readonly number[]): number {
  let count = 0;
  for (let day = Math.floor(from / DAY) + 1; day <= Math.floor(to / DAY); day++) {
    if (days.includes(weekdayOf(day * DAY))) count++;
  }
  return count;
}
