import type { DueRule, Lab } from '@buildweek/model';
import { windowsOf } from './duty-table.ts';
import { minutes } from './minutes.ts';
import { elapsedOf, localOf } from './wall-clock.ts';

const DAY = 24 * 60;

/**
 * When a job is due that is asked for at an elapsed minute; null when nothing is promised. A closing time that
 * is over already cannot be promised: the next one is.
 *
 * @throws Error when the calendar has not enough working days in the given weeks
 */
export function dueDate(rule: DueRule, asked: number, lab: Lab, weeks: number): number | null {
  switch (rule.kind) {
    case 'none':
      return null;
    case 'clock':
      return asked + minutes(rule.hours);
    case 'working days': {
      const local = localOf(asked, lab.clockChanges);
      const closings = closingTimes(lab, weeks);
      let day = Math.floor(local / DAY);
      const late = rule.cutOffHour !== null && local - day * DAY >= minutes(rule.cutOffHour);
      if (late && closings.has(day)) day++;
      const days = [...closings.keys()].filter((working) => working >= day).sort((a, b) => a - b);
      for (const promised of days.slice(rule.days)) {
        const closing = elapsedOf(closings.get(promised) ?? 0, lab.clockChanges);
        if (closing > asked) return closing;
      }
      throw new Error('The calendar of the lab ends before the promise.');
    }
  }
}

/** For each working day of the lab the local minute at which its last window ends. */
function closingTimes(lab: Lab, weeks: number): Map<number, number> {
  const calendar = lab.calendars.find((candidate) => candidate.name === lab.labCalendar);
  if (calendar === undefined) throw new Error(`No calendar is named ${lab.labCalendar}.`);
  const closings = new Map<number, number>();
  for (const window of windowsOf(calendar, weeks)) {
    const day = Math.floor(window.from / DAY);
    if (day >= 0) closings.set(day, Math.max(closings.get(day) ?? 0, window.to));
  }
  return closings;
}
