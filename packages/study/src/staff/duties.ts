import {
  createLocalTime,
  HOURS_PER_WEEK,
  type LocalTime,
  MILLISECONDS_PER_HOUR,
  MILLISECONDS_PER_WEEK,
  windowsOf,
} from '@buildweek/core';
import type { HourSpan, Lab } from '@buildweek/model';
import type { DutyHours } from '@buildweek/results';

const HOURS_PER_DAY = 24;
const DAYS_PER_WEEK = 7;

/** A stretch on duty, elapsed milliseconds since the start of the plan. */
export interface Stretch {
  readonly start: number;
  readonly end: number;
}

/** One person of the lab, and when that person is on duty: ascending, not touching. */
export interface PersonDuties {
  readonly person: string;
  readonly skills: readonly string[];
  readonly stretches: readonly Stretch[];
}

/** Everybody's duties over some weeks from the start of the plan, by the calendars. */
export interface Duties {
  readonly persons: readonly PersonDuties[];
  readonly localTime: LocalTime;
  readonly weeks: number;
  /** Elapsed milliseconds at the end of the last week. */
  readonly horizon: number;
}

/**
 * When each person is on duty by the calendars, without stated leave (a window that begins in leave is left out, as
 * the simulator does) and without absence by chance. A stretch that begins before the horizon is cut there.
 */
export function dutiesOf(lab: Lab, weeks: number): Duties {
  const localTime = createLocalTime(lab.clockChanges);
  const horizon = localTime.toElapsed(weeks * MILLISECONDS_PER_WEEK);
  const persons = lab.people.flatMap((group): PersonDuties[] => {
    const calendar = lab.calendars.find(({ name }) => name === group.calendar);
    if (calendar === undefined) throw new Error(`There is no calendar "${group.calendar}" in the lab.`);
    const { starts, ends } = windowsOf(calendar, localTime, horizon);
    const all = Array.from(starts, (start, index) => ({
      start,
      end: Math.min(horizon, ends[index] ?? start),
    }));
    return Array.from({ length: group.count }, (_, index) => {
      const leave = group.leave.filter(({ person }) => person === index + 1);
      const isAway = (start: number): boolean => {
        const hour = localTime.toLocal(start) / MILLISECONDS_PER_HOUR;
        return leave.some(({ fromHour, toHour }) => hour >= fromHour && hour < toHour);
      };
      return {
        person: `${group.name} ${index + 1}`,
        skills: group.skills,
        stretches: all.filter(({ start }) => !isAway(start)),
      };
    });
  });
  return { persons, localTime, weeks, horizon };
}

/**
 * Hours of people in an average week of the plan.
 *
 * @param night hours of the day; the end may lie beyond 24
 */
export function dutyHours(lab: Lab, duties: Duties, night: HourSpan): DutyHours {
  const { persons, weeks, horizon } = duties;
  const present = presence(duties);
  const perWeek = (milliseconds: number): number => milliseconds / MILLISECONDS_PER_HOUR / weeks;
  const lasting = (isMeant: (count: number) => boolean): number =>
    present.reduce((sum, { start, end, count }) => sum + (isMeant(count) ? end - start : 0), 0);
  return {
    persons: persons.length,
    roster: rosterHours(lab),
    night: perWeek(nightTime(duties, night)),
    alone: perWeek(lasting((count) => count === 1)),
    nobody: perWeek(horizon - lasting((count) => count > 0)),
    personsByHourOfWeek: personsByHour(duties, null),
  };
}

/** Hours of the weekly roster over all persons: what closing days and leave take off is not taken off. */
function rosterHours(lab: Lab): number {
  return lab.people.reduce((sum, { count, calendar }) => {
    const weekly = lab.calendars.find(({ name }) => name === calendar)?.weekly ?? [];
    return sum + count * weekly.reduce((hours, { fromHour, toHour }) => hours + toHour - fromHour, 0);
  }, 0);
}

/** Stretches in which the number of persons on duty stays the same. */
function presence({ persons }: Duties): (Stretch & { readonly count: number })[] {
  const changes = persons
    .flatMap(({ stretches }) =>
      stretches.flatMap(({ start, end }) => [[start, 1] as const, [end, -1] as const]),
    )
    .sort((one, other) => one[0] - other[0]);
  let count = 0;
  return changes.flatMap(([start, change], index) => {
    count += change;
    const end = changes[index + 1]?.[0] ?? start;
    return end > start ? [{ start, end, count }] : [];
  });
}

/** Person milliseconds at night, by the clock on the wall. */
function nightTime({ persons, localTime, weeks }: Duties, night: HourSpan): number {
  let sum = 0;
  for (let day = -1; day < weeks * DAYS_PER_WEEK; day++) {
    const at = (hour: number): number =>
      localTime.toElapsed((day * HOURS_PER_DAY + hour) * MILLISECONDS_PER_HOUR);
    const [from, to] = [at(night.fromHour), at(night.toHour)];
    for (const { stretches } of persons) {
      for (const { start, end } of stretches) sum += Math.max(0, Math.min(end, to) - Math.max(start, from));
    }
  }
  return sum;
}

/** Mean number of persons on duty, all or those with a skill, in each hour of the local week. */
export function personsByHour({ persons, localTime, weeks }: Duties, skill: string | null): number[] {
  const sums = new Array<number>(HOURS_PER_WEEK).fill(0);
  for (const { skills, stretches } of persons) {
    if (skill !== null && !skills.includes(skill)) continue;
    for (const { start, end } of stretches) {
      for (let from = start; from < end; ) {
        const local = localTime.toLocal(from);
        const to = Math.min(end, from + MILLISECONDS_PER_HOUR - (local % MILLISECONDS_PER_HOUR));
        const hour = Math.floor(local / MILLISECONDS_PER_HOUR) % HOURS_PER_WEEK;
        sums[hour] = (sums[hour] ?? 0) + to - from;
        from = to;
      }
    }
  }
  return sums.map((sum) => sum / MILLISECONDS_PER_HOUR / weeks);
}
