import type { HourSpan } from '@buildweek/model';
import type { ScenarioExtraWindow } from '../scenario.ts';

/** Windows of a calendar file as a usual week, and the days that are not like it. */
export interface UsualWeek {
  /** Hours since Monday 00:00. */
  readonly weekly: HourSpan[];
  /** Days since 1970-01-01 on which the windows of the usual week are not there. */
  readonly closedDays: number[];
  /** What is there on these days. */
  readonly shifts: ScenarioExtraWindow[];
}

const DAYS = 7;
const HOURS_PER_DAY = 24;

/**
 * Dated windows as the week that comes most often, with every day that differs from it. Whatever goes by the week (when
 * jobs are asked for, the hours of a roster, working days) goes by the usual one; who is there when is exact.
 *
 * @param windows in order of time
 * @param startDay the Monday on which the plan starts, days since 1970-01-01
 * @param weeks so many from then on are looked at
 */
export function usualWeekOf(
  windows: readonly ScenarioExtraWindow[],
  startDay: number,
  weeks: number,
): UsualWeek {
  const byDay = new Map<number, HourSpan[]>();
  for (const { day, span } of windows) byDay.set(day, [...(byDay.get(day) ?? []), span]);
  const keyOf = (day: number): string => JSON.stringify(byDay.get(day) ?? []);
  const patterns = new Map<string, { count: number; monday: number }>();
  for (let week = 0; week < weeks; week++) {
    const monday = startDay + DAYS * week;
    const key = daysFrom(monday).map(keyOf).join();
    const known = patterns.get(key);
    patterns.set(key, { count: (known?.count ?? 0) + 1, monday: known?.monday ?? monday });
  }
  // A week without any window is a holiday.
  const empty = Array.from({ length: DAYS }, () => '[]').join();
  const [usual] = [...patterns]
    .filter(([key]) => key !== empty)
    .map(([, pattern]) => pattern)
    .sort((one, other) => other.count - one.count || one.monday - other.monday);
  if (usual === undefined) return { weekly: [], closedDays: [], shifts: [...windows] };
  const closedDays: number[] = [];
  const shifts: ScenarioExtraWindow[] = [];
  // From the week before on: a window of its Sunday may reach into the first Monday. Behind the last event of the file
  // the usual week goes on.
  const last = Math.max(...byDay.keys());
  for (let day = startDay - DAYS; day <= Math.min(last, startDay + DAYS * weeks - 1); day++) {
    const like = usual.monday + ((((day - startDay) % DAYS) + DAYS) % DAYS);
    if (keyOf(day) === keyOf(like)) continue;
    closedDays.push(day);
    shifts.push(...(byDay.get(day) ?? []).map((span) => ({ day, span })));
  }
  const weekly = daysFrom(usual.monday).flatMap((day, weekday) =>
    (byDay.get(day) ?? []).map(({ fromHour, toHour }) => ({
      fromHour: weekday * HOURS_PER_DAY + fromHour,
      toHour: weekday * HOURS_PER_DAY + toHour,
    })),
  );
  return { weekly, closedDays, shifts };
}

function daysFrom(monday: number): number[] {
  return Array.from({ length: DAYS }, (_, day) => monday + day);
}
