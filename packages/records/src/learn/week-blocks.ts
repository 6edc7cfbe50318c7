import {
  type CountedEvents,
  chiSquareFit,
  type Interval,
  rateRatio,
  shrunkenRates,
} from '@buildweek/statistics';
import type { WorkingHours } from '../facts/working-hours.ts';
import type { CivilTime } from '../logged-jobs.ts';
import { dayParts } from './day-parts.ts';

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
const WEEK = 7 * DAY;
/** 1970-01-01 was a Thursday; weeks begin on Monday. */
const MONDAY = 4 * DAY;
/** Probability below which days of the week are told apart. */
const SIGNIFICANT = 0.01;
const LEVEL = 0.95;
const HOURS_OF_WEEK = 168;

/** Hours of the week in which jobs are asked for at one rate. */
export interface WeekBlock {
  readonly name: string;
  readonly spans: readonly WeekSpan[];
  /** Jobs that were counted in it, and how many hours of it the log holds. */
  readonly jobs: number;
  readonly hours: number;
  /** Jobs an hour, drawn towards the mean of all blocks by as much as the counts do not tell them apart. */
  readonly rate: Interval;
}

/** Days from 0 for Monday, hours of the day. */
export interface WeekSpan {
  readonly fromDay: number;
  readonly toDay: number;
  readonly fromHour: number;
  readonly toHour: number;
}

/**
 * The hours of the week in three to six blocks: mornings and afternoons of the working days, with the one day that the
 * counts set apart by itself, evenings, and nights with days off. Where a day divides is told by the counts of its hours.
 *
 * @param times at which jobs were asked for, those that tell the hour
 * @param weeks that the log holds
 * @param hours when somebody is in
 */
export function weekBlocks(times: readonly CivilTime[], weeks: number, hours: WorkingHours): WeekBlock[] {
  const single = dayApart(times, hours);
  const groups = single === null ? [hours.days] : [[single], hours.days.filter((day) => day !== single)];
  const { fromHour, toHour } = hours;
  const { noon, dayEnd } = dayParts(times, hours);
  const evening = Math.min(24, Math.max(toHour + 1, 22));
  const named = [
    ...groups.flatMap((days) => [
      block(`${daysText(days)}, morning`, days, fromHour, noon),
      block(`${daysText(days)}, afternoon`, days, noon, dayEnd),
    ]),
    ...(dayEnd < evening ? [block('evenings of working days', hours.days, dayEnd, evening)] : []),
  ];
  const rest = { name: 'nights and days off', spans: complement(named.flatMap(({ spans }) => spans)) };
  const blocks = [...named, rest].filter(({ spans }) => spans.length > 0);
  const counted = blocks.map(
    ({ spans }): CountedEvents => ({
      count: times.filter((time) => spans.some((span) => contains(span, time))).length,
      exposure: weeks * hoursOf(spans),
    }),
  );
  const rates = shrunkenRates(counted, LEVEL);
  return blocks.map(({ name, spans }, index) => ({
    name,
    spans,
    jobs: counted[index]?.count ?? 0,
    hours: counted[index]?.exposure ?? 0,
    rate: rates[index] ?? { value: 0, low: 0, high: 0, level: LEVEL },
  }));
}

/** The one working day whose jobs are clearly more or fewer than those of the others; null where there is none. */
function dayApart(times: readonly CivilTime[], { days }: WorkingHours): number | null {
  if (days.length < 3) return null;
  const counts = days.map((day) => times.filter((time) => weekdayOf(time) === day).length);
  const total = counts.reduce((sum, count) => sum + count, 0);
  const mean = total / days.length;
  if (mean < 5) return null;
  const even = chiSquareFit(
    counts,
    counts.map(() => mean),
    0,
  );
  if (even.pValue >= SIGNIFICANT) return null;
  const farthest = counts.reduce(
    (most, count, index) => (Math.abs(count - mean) > Math.abs((counts[most] ?? 0) - mean) ? index : most),
    0,
  );
  const own = counts[farthest] ?? 0;
  const { pValue } = rateRatio(
    { count: own, exposure: 1 },
    { count: total - own, exposure: days.length - 1 },
    LEVEL,
  );
  return pValue < SIGNIFICANT / days.length ? (days[farthest] ?? null) : null;
}

function block(
  name: string,
  days: readonly number[],
  fromHour: number,
  toHour: number,
): { name: string; spans: WeekSpan[] } {
  return {
    name,
    spans:
      toHour > fromHour ? runsOf(days).map(([fromDay, toDay]) => ({ fromDay, toDay, fromHour, toHour })) : [],
  };
}

/** Days that follow upon each other, as pairs of the first and the last. */
function runsOf(days: readonly number[]): [number, number][] {
  const runs: [number, number][] = [];
  for (const day of days) {
    const last = runs.at(-1);
    if (last !== undefined && last[1] === day - 1) last[1] = day;
    else runs.push([day, day]);
  }
  return runs;
}

/** All hours of the week that are in none of the spans. */
function complement(spans: readonly WeekSpan[]): WeekSpan[] {
  const free: WeekSpan[] = [];
  for (let day = 0; day < 7; day++) {
    let from: number | null = null;
    for (let hour = 0; hour <= 24; hour++) {
      const isTaken =
        hour === 24 ||
        spans.some(
          (span) => day >= span.fromDay && day <= span.toDay && hour >= span.fromHour && hour < span.toHour,
        );
      if (!isTaken) from ??= hour;
      else if (from !== null) {
        free.push({ fromDay: day, toDay: day, fromHour: from, toHour: hour });
        from = null;
      }
    }
  }
  return joined(free);
}

/** The same hours of days that follow upon each other are one span. */
function joined(spans: readonly WeekSpan[]): WeekSpan[] {
  const found: WeekSpan[] = [];
  for (const span of spans) {
    const before = found.findIndex(
      (one) => one.toDay === span.fromDay - 1 && one.fromHour === span.fromHour && one.toHour === span.toHour,
    );
    const known = found[before];
    if (known === undefined) found.push(span);
    else found[before] = { ...known, toDay: span.toDay };
  }
  return found;
}

function contains({ fromDay, toDay, fromHour, toHour }: WeekSpan, time: CivilTime): boolean {
  const day = weekdayOf(time);
  const hour = (((time % DAY) + DAY) % DAY) / HOUR;
  return day >= fromDay && day <= toDay && hour >= fromHour && hour < toHour;
}

function hoursOf(spans: readonly WeekSpan[]): number {
  const hours = spans.reduce(
    (sum, { fromDay, toDay, fromHour, toHour }) => sum + (toDay - fromDay + 1) * (toHour - fromHour),
    0,
  );
  return Math.min(HOURS_OF_WEEK, hours);
}

/** From 0 for Monday. */
function weekdayOf(time: CivilTime): number {
  return Math.floor(((((time - MONDAY) % WEEK) + WEEK) % WEEK) / DAY);
}

const DAY_NAMES = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];

/** "mon", "tue-fri", "mon-wed and fri". */
function daysText(days: readonly number[]): string {
  return runsOf(days)
    .map(([from, to]) => (from === to ? (DAY_NAMES[from] ?? '') : `${DAY_NAMES[from]}-${DAY_NAMES[to]}`))
    .join(' and ');
}

/** A span as a scenario has it: "tue-fri 07:00-12:00". */
export function spanText({ fromDay, toDay, fromHour, toHour }: WeekSpan): string {
  const days = fromDay === toDay ? DAY_NAMES[fromDay] : `${DAY_NAMES[fromDay]}-${DAY_NAMES[toDay]}`;
  const clock = (hour: number): string => `${String(hour).padStart(2, '0')}:00`;
  return `${days} ${clock(fromHour)}-${clock(toHour)}`;
}
