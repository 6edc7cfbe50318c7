import type { HourSpan, PeopleGroup, WorkingCalendar } from '@buildweek/model';
import { openWindows } from './open-windows.ts';

/** What has to be known of a group to see when its people are there. */
type AttendingGroup = Pick<PeopleGroup, 'count' | 'calendar' | 'skills'>;

/** When people with a skill are there, in an ordinary week. */
export class Attendance {
  private readonly groups: readonly { count: number; windows: readonly HourSpan[] }[];

  constructor(people: readonly AttendingGroup[], calendars: readonly WorkingCalendar[], skill: string) {
    this.groups = people
      .filter((group) => group.skills.includes(skill))
      .map((group) => ({
        count: group.count,
        windows: windowsOf(calendars.find((calendar) => calendar.name === group.calendar)),
      }));
  }

  /** Persons with the skill, there or not. */
  get persons(): number {
    return this.groups.reduce((sum, group) => sum + group.count, 0);
  }

  /**
   * The longest stretch in which the same persons are there without a break.
   *
   * @param persons how many of them
   * @returns hours; 0 when so many are never there together, Infinity when they never leave
   */
  longestHours(persons: number): number {
    const starts = this.groups.flatMap((group) => group.windows.map((window) => window.fromHour));
    let longest = 0;
    for (const start of starts) {
      const left = this.groups
        .flatMap(({ count, windows }) => {
          const window = windows.find((span) => span.fromHour <= start && start < span.toHour);
          return window === undefined ? [] : [{ count, hours: window.toHour - start }];
        })
        .sort((a, b) => b.hours - a.hours);
      // Those who stay longest are taken first; the one who leaves first among them ends the stretch.
      let found = 0;
      for (const { count, hours } of left) {
        found += count;
        if (found < persons) continue;
        longest = Math.max(longest, hours);
        break;
      }
    }
    return longest >= 168 ? Number.POSITIVE_INFINITY : longest;
  }
}

function windowsOf(calendar: WorkingCalendar | undefined): HourSpan[] {
  return calendar === undefined ? [] : openWindows(calendar.extra, calendar.weekly);
}
