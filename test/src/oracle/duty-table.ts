import type { ClockChange, WorkingCalendar } from '@buildweek/model';
import { minutes } from './minutes.ts';
import { elapsedOf } from './wall-clock.ts';

const DAY = 24 * 60;
const WEEK = 7 * DAY;

/** A window in local minutes, as the calendar says it: not yet joined with its neighbours. */
export interface LocalWindow {
  readonly from: number;
  readonly to: number;
}

/**
 * All windows that start within the given weeks. A closed day takes away the windows of the week that start
 * on it, not the additional ones: these are how one works on a closed day.
 */
export function windowsOf(calendar: WorkingCalendar, weeks: number): LocalWindow[] {
  const windows: LocalWindow[] = [];
  for (let week = -1; week < weeks; week++) {
    for (const span of calendar.weekly) {
      const from = week * WEEK + minutes(span.fromHour);
      const to = week * WEEK + minutes(span.toHour);
      const closed = calendar.closedDays.includes(Math.floor(from / DAY));
      if (!closed) windows.push({ from, to });
    }
  }
  for (const span of calendar.extra) windows.push({ from: minutes(span.fromHour), to: minutes(span.toHour) });
  return windows;
}

/**
 * For every elapsed minute the elapsed minute at which the unbroken window ends that it lies in; 0 when
 * nobody with this calendar is there. Windows that touch or overlap are one.
 */
export function dutyTable(
  calendar: WorkingCalendar,
  changes: readonly ClockChange[],
  weeks: number,
): Int32Array {
  const length = weeks * WEEK;
  const there = new Uint8Array(length);
  for (const window of windowsOf(calendar, weeks)) {
    const from = Math.max(0, elapsedOf(window.from, changes));
    const to = Math.min(length, elapsedOf(window.to, changes));
    for (let minute = from; minute < to; minute++) there[minute] = 1;
  }
  const ends = new Int32Array(length);
  let end = length;
  for (let minute = length - 1; minute >= 0; minute--) {
    if (there[minute] === 0) end = minute;
    else ends[minute] = end;
  }
  return ends;
}
