import { MILLISECONDS_PER_HOUR, MILLISECONDS_PER_WEEK, toMilliseconds } from '../kernel/clock.ts';
import type { LocalTime } from '../kernel/local-time.ts';
import { closings, union, type WorkingWindows } from '../kernel/working-windows.ts';
import type { CompiledLab } from './compiled-lab.ts';

/** A gap in attendance longer than this closes the lab for the day; a lunch break does not. */
const CLOSING_GAP = 2 * MILLISECONDS_PER_HOUR;

/** For each unit group the moments at which time alone changes whether it may launch; elapsed, ascending. */
export interface LaunchTimes {
  readonly fixedTimes: readonly (readonly number[])[];
  /** When the last of those who start the group's units goes for the day. */
  readonly closings: readonly (readonly number[])[];
  /** When the first of them comes again. */
  readonly openings: readonly (readonly number[])[];
}

/**
 * @param windows of each people group
 * @param labWindows of the lab calendar; they close the day for units that nobody needs to start
 * @param horizon elapsed milliseconds up to which times are worked out
 */
export function launchTimesOf(
  compiled: CompiledLab,
  windows: readonly WorkingWindows[],
  labWindows: WorkingWindows,
  localTime: LocalTime,
  horizon: number,
): LaunchTimes {
  const attendance = compiled.unitGroups.map((group) => {
    if (!group.launch.beforeClosing) return null;
    const [queueIndex] = group.startQueues;
    if (queueIndex === undefined) return labWindows;
    const { candidates } = compiled.attendedQueues[queueIndex];
    const groups = new Set(Array.from(candidates, (person) => compiled.persons[person].group));
    return union([...groups].map((people) => windows[people]));
  });
  return {
    fixedTimes: compiled.unitGroups.map((group) =>
      fixedTimes(group.launch.fixedHours ?? [], localTime, horizon),
    ),
    closings: attendance.map((windowsOfGroup) =>
      windowsOfGroup === null ? [] : [...closings(windowsOfGroup, CLOSING_GAP)],
    ),
    openings: attendance.map((windowsOfGroup) => (windowsOfGroup === null ? [] : [...windowsOfGroup.starts])),
  };
}

function fixedTimes(weeklyHours: readonly number[], localTime: LocalTime, horizon: number): number[] {
  const times: number[] = [];
  if (weeklyHours.length === 0) return times;
  for (let week = 0; week * MILLISECONDS_PER_WEEK < horizon; week++) {
    for (const hour of weeklyHours) {
      times.push(localTime.toElapsed(week * MILLISECONDS_PER_WEEK + toMilliseconds(hour)));
    }
  }
  return times.sort((a, b) => a - b);
}
