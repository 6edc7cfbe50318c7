import {
  createLocalTime,
  HOURS_PER_WEEK,
  hoursWithin,
  MILLISECONDS_PER_HOUR,
  MILLISECONDS_PER_WEEK,
  union,
  type WorkingWindows,
  windowsOf,
} from '@buildweek/core';
import type { Lab } from '@buildweek/model';
import type { Caution } from '@buildweek/results';

/** So many that closed days of the first weeks cannot hide what a usual week brings. */
const WEEKS_LOOKED_AT = 8;

const LONGEST_STRETCH_HOURS = 6;
const SHORTEST_REST_HOURS = 11;
const MOST_WEEKLY_HOURS = 48;

/**
 * Unattended running, people alone, and hours that law or agreement may not allow. The thresholds are the minima of
 * Directive 2003/88/EC (daily rest of 11 h, a break when the day is longer than 6 h, 48 h a week on average); which
 * law applies is not for a program to say.
 */
export function workingTimeCautions(lab: Lab): Caution[] {
  const localTime = createLocalTime(lab.clockChanges);
  const horizon = WEEKS_LOOKED_AT * MILLISECONDS_PER_WEEK;
  const groups = lab.people.flatMap((group) => {
    const calendar = lab.calendars.find((candidate) => candidate.name === group.calendar);
    return calendar === undefined ? [] : [{ group, windows: windowsOf(calendar, localTime, horizon) }];
  });
  const cautions: Caution[] = [];
  const attended = union(groups.map((entry) => entry.windows));
  if (lab.machines.length > 0 && hoursWithin(attended, 0, horizon) < WEEKS_LOOKED_AT * HOURS_PER_WEEK) {
    cautions.push({
      topic: 'Unattended running',
      text: 'Builds run on at night and at weekends with nobody there. The fire rules of the site, the insurer and the supplier of each machine decide whether they may; some sites forbid it.',
    });
  }
  if (
    isAnybodyAlone(
      groups.map(({ group, windows }) => ({ count: group.count, windows })),
      horizon,
    )
  ) {
    cautions.push({
      topic: 'Lone working',
      text: 'At some hours one person is alone in the lab. The rules of the site say which work with solvents, powder or repairs nobody may do alone.',
    });
  }
  for (const { group, windows } of groups) {
    const reasons = longHours(windows, horizon);
    if (reasons.length === 0) continue;
    cautions.push({
      topic: 'Working time',
      text: `The hours of "${group.name}" have ${reasons.join(' and ')}. Law and agreement on site say whether one person may work them.`,
    });
  }
  return cautions;
}

interface Attendance {
  readonly count: number;
  readonly windows: WorkingWindows;
}

/** Whether there is a moment with exactly one person on duty. */
function isAnybodyAlone(groups: readonly Attendance[], horizon: number): boolean {
  const changes = groups
    .flatMap(({ count, windows }) => [
      ...Array.from(windows.starts, (time) => ({ time, change: count })),
      ...Array.from(windows.ends, (time) => ({ time, change: -count })),
    ])
    .filter((entry) => entry.time < horizon)
    .sort((one, other) => one.time - other.time);
  let present = 0;
  return changes.some(({ time, change }, index) => {
    present += change;
    const last = changes[index + 1]?.time !== time;
    return last && present === 1;
  });
}

/** Breaks of less than this do not end a working day. */
const SHORTEST_NIGHT_HOURS = 4;

/** What of the hours of one calendar goes beyond the thresholds, in words. */
function longHours(windows: WorkingWindows, horizon: number): string[] {
  const spans = Array.from(windows.starts, (start, index) => ({ start, end: windows.ends[index] ?? start }));
  const reasons: string[] = [];
  if (spans.some(({ start, end }) => (end - start) / MILLISECONDS_PER_HOUR > LONGEST_STRETCH_HOURS + 1e-9)) {
    reasons.push(`more than ${LONGEST_STRETCH_HOURS} h without a break`);
  }
  const isShort = spans.some(({ start }, index) => {
    const before = spans[index - 1];
    if (before === undefined) return false;
    const rest = (start - before.end) / MILLISECONDS_PER_HOUR;
    return rest >= SHORTEST_NIGHT_HOURS && rest < SHORTEST_REST_HOURS - 1e-9;
  });
  if (isShort) reasons.push(`less than ${SHORTEST_REST_HOURS} h of rest between two days`);
  if (hoursWithin(windows, 0, horizon) / WEEKS_LOOKED_AT > MOST_WEEKLY_HOURS) {
    reasons.push(`more than ${MOST_WEEKLY_HOURS} h in a week`);
  }
  return reasons;
}
