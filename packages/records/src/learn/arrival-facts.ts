import {
  type ArrivalBlock,
  type Dispersion,
  dispersionAbout,
  dispersionTest,
  type ExponentialTrend,
  exponentialTrend,
  fitNegativeBinomial,
  type LaplaceTrend,
  laplaceTrend,
  poissonArrivalsTest,
  roundingUnit,
  sharesOfTrend,
  unrounded,
} from '@buildweek/statistics';
import type { WorkingHours } from '../facts/working-hours.ts';
import type { CivilTime, LoggedJobs } from '../logged-jobs.ts';
import { dayParts } from './day-parts.ts';
import { type WeekBlock, weekBlocks } from './week-blocks.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;
const WEEK = 7 * DAY;
const MONDAY = 4 * DAY;
const LEVEL = 0.95;
const SIGNIFICANT = 0.05;
/** A trend is only believed when it is as clear as this: it moves every date that is promised later. */
const CLEAR_TREND = 0.01;
/** Level and growth. */
const TREND_PARAMETERS = 2;
/** Below so many weeks nothing is said of how they vary. */
const FEWEST_WEEKS = 8;
/** Share of jobs that must tell the hour at which they were asked for. */
const TOLD_SHARE = 0.6;
const ROUNDINGS = [60, 30, 15, 5, 1].map((minutes) => minutes * MINUTE);

/** How jobs arrive, by all that a log tells. */
export interface ArrivalFacts {
  /** Jobs of each whole week, Monday to Sunday, with the Monday of the first. */
  readonly weekly: readonly number[];
  readonly firstMonday: CivilTime;
  /** Null for fewer than eight weeks. */
  readonly dispersion: Dispersion | null;
  /** Coefficient of variation of whole weeks beyond chance; 0 where the counts do not ask for it. */
  readonly weekVariation: number;
  /** The same for the limits of rates, by moments: also where it is not significant, so that they hold often enough. */
  readonly allowedVariation: number;
  /** Whether jobs come by themselves within blocks of a day; null where too few tell the hour. */
  readonly withinDays: {
    readonly pValue: number;
    readonly arrivals: number;
    readonly unitMinutes: number;
  } | null;
  readonly trend: (LaplaceTrend & { readonly fitted: ExponentialTrend; readonly isClear: boolean }) | null;
  /** Null where the log does not tell the hours. */
  readonly blocks: readonly WeekBlock[] | null;
}

/**
 * How jobs arrive: by hour of the week, from week to week, with a trend, and whether by themselves or in clusters.
 *
 * @param draw numbers between 0 and 1 from a stream of its own, to undo rounding
 */
export function arrivalFacts(
  { jobs, from, until }: LoggedJobs,
  hours: WorkingHours | null,
  draw: () => number,
): ArrivalFacts {
  const firstMonday = Math.ceil((from - MONDAY) / WEEK) * WEEK + MONDAY;
  const weeks = Math.max(0, Math.floor((until - firstMonday) / WEEK));
  const within = jobs.filter(({ asked }) => asked >= firstMonday && asked < firstMonday + weeks * WEEK);
  const weekly = Array.from({ length: weeks }, () => 0);
  for (const { asked } of within) {
    const week = Math.floor((asked - firstMonday) / WEEK);
    weekly[week] = (weekly[week] ?? 0) + 1;
  }
  const trend = trendOf(weekly);
  const variation = weekVariationOf(weekly, trend);
  const told = within.filter(({ askedHasClock }) => askedHasClock).map(({ asked }) => asked);
  const tellsHours = hours !== null && told.length >= TOLD_SHARE * within.length && told.length >= 30;
  return {
    weekly,
    firstMonday,
    ...variation,
    withinDays: tellsHours ? withinDaysTest(told, hours, draw) : null,
    trend,
    blocks: tellsHours ? weekBlocks(told, weeks, hours) : null,
  };
}

/** How whole weeks vary: about a trend where there is a clear one, which would look like variation otherwise. */
function weekVariationOf(
  weekly: readonly number[],
  trend: ArrivalFacts['trend'],
): Pick<ArrivalFacts, 'dispersion' | 'weekVariation' | 'allowedVariation'> {
  if (weekly.length < FEWEST_WEEKS || weekly.every((count) => count === 0)) {
    return { dispersion: null, weekVariation: 0, allowedVariation: 0 };
  }
  const means = trend?.isClear === true ? expectedWeekly(weekly, trend.fitted) : null;
  const dispersion =
    means === null ? dispersionTest(weekly) : dispersionAbout(weekly, means, TREND_PARAMETERS);
  const { shape } = means === null ? fitNegativeBinomial(weekly) : fitNegativeBinomial(weekly, means);
  return {
    dispersion,
    weekVariation: dispersion.pValue < SIGNIFICANT ? 1 / Math.sqrt(shape) : 0,
    allowedVariation: Math.sqrt(Math.max(0, dispersion.index - 1) / dispersion.mean),
  };
}

/** Jobs of every week by a trend. */
function expectedWeekly(weekly: readonly number[], trend: ExponentialTrend): number[] {
  const jobs = weekly.reduce((sum, count) => sum + count, 0);
  return sharesOfTrend(trend, weekly.length).map((share) => jobs * share);
}

/** The parts of every working day that had an arrival, each with a rate of its own. */
function withinDaysTest(
  times: readonly CivilTime[],
  hours: WorkingHours,
  draw: () => number,
): ArrivalFacts['withinDays'] {
  const unit = roundingUnit(times, ROUNDINGS);
  const { noon, dayEnd } = dayParts(times, hours);
  const parts = [
    [hours.fromHour, noon],
    [noon, dayEnd],
    [dayEnd, hours.toHour],
  ].filter(([start = 0, end = 0]) => end > start);
  const blocks = new Map<string, ArrivalBlock & { times: number[] }>();
  for (const time of times) {
    const day = Math.floor(time / DAY) * DAY;
    for (const [part, [start = 0, end = 0]] of parts.entries()) {
      const [from, to] = [day + start * HOUR, day + end * HOUR];
      if (time < from || time >= to) continue;
      const known = blocks.get(`${day} ${part}`);
      if (known === undefined) blocks.set(`${day} ${part}`, { from, to, times: [time] });
      else known.times.push(time);
    }
  }
  const spread = [...blocks.values()].map((block) => ({
    ...block,
    times: unrounded(block.times, unit, draw),
  }));
  const arrivals = spread.reduce((sum, block) => sum + block.times.length, 0);
  if (arrivals < 30) return null;
  return { ...poissonArrivalsTest(spread), unitMinutes: unit / MINUTE };
}

/**
 * By whole weeks: the weekend at the end of the last one would look like a decline. Weeks that are busy or calm by chance
 * look like a trend when a few of them come together: that is allowed for.
 */
function trendOf(weekly: readonly number[]): ArrivalFacts['trend'] {
  const times = weekly.flatMap((count, week) => Array.from({ length: count }, () => (week + 0.5) * WEEK));
  if (times.length < 30 || weekly.length < FEWEST_WEEKS) return null;
  const end = weekly.length * WEEK;
  const about = expectedWeekly(weekly, exponentialTrend(times, end, LEVEL));
  const dispersion = Math.max(1, dispersionAbout(weekly, about, TREND_PARAMETERS).index);
  const test = laplaceTrend(times, end, dispersion);
  return {
    ...test,
    fitted: exponentialTrend(times, end, LEVEL, dispersion),
    isClear: test.pValue < CLEAR_TREND,
  };
}
