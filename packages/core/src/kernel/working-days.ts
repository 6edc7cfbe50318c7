import type { DueRule, WorkingCalendar } from '@buildweek/model';
import { spansOf } from './calendar-spans.ts';
import { MILLISECONDS_PER_DAY, MILLISECONDS_PER_WEEK, toMilliseconds } from './clock.ts';
import type { LocalTime } from './local-time.ts';

/** Makes promises: when a job is due that is asked for at a time. */
export interface WorkingDays {
  /**
   * When a job is due. By `working days`, a job asked for at or after the cut-off, or on a day that is none,
   * counts as asked for on the next working day; it is due at the closing time of the n-th working day after
   * that. A closing time that is over already when the job is asked for is not promised: the next one is.
   *
   * @param arrivalMilliseconds elapsed time, not negative, at which the job is asked for
   * @param rule how promises are made
   * @returns elapsed milliseconds; Infinity for no promise, and where no such working day ever comes
   */
  dueAfter(arrivalMilliseconds: number, rule: DueRule): number;
}

class CalendarDays implements WorkingDays {
  private readonly calendar: WorkingCalendar;
  private readonly localTime: LocalTime;
  private weeks: number;
  /** Elapsed closing times of the working days, and the days (0 is the first Monday) they belong to. */
  private closingTimes = new Float64Array(0);
  private days = new Float64Array(0);
  /** For each day of the plan the position of the first working day that is not before it. */
  private firstFrom = new Int32Array(0);

  constructor(calendar: WorkingCalendar, localTime: LocalTime, horizonMilliseconds: number) {
    this.calendar = calendar;
    this.localTime = localTime;
    this.weeks = Math.max(1, Math.ceil(horizonMilliseconds / MILLISECONDS_PER_WEEK));
    this.writeOut();
  }

  dueAfter(arrivalMilliseconds: number, rule: DueRule): number {
    switch (rule.kind) {
      case 'none':
        return Number.POSITIVE_INFINITY;
      case 'clock':
        return arrivalMilliseconds + toMilliseconds(rule.hours);
      case 'working days':
        return this.closingAfter(arrivalMilliseconds, rule.days, rule.cutOffHour);
    }
  }

  private closingAfter(arrival: number, workingDays: number, cutOffHour: number | null): number {
    const local = this.localTime.toLocal(arrival);
    const day = Math.floor(local / MILLISECONDS_PER_DAY);
    const timeOfDay = local - day * MILLISECONDS_PER_DAY;
    for (;;) {
      if (day < this.firstFrom.length) {
        let position = this.firstFrom[day];
        const afterCutOff = cutOffHour !== null && timeOfDay >= toMilliseconds(cutOffHour);
        if (afterCutOff && this.days[position] === day) position++;
        position += workingDays;
        while (position < this.closingTimes.length && this.closingTimes[position] <= arrival) position++;
        if (position < this.closingTimes.length) return this.closingTimes[position];
      }
      if (!this.reachFurther()) return Number.POSITIVE_INFINITY;
    }
  }

  /** @returns false when there is nothing more to come */
  private reachFurther(): boolean {
    const { weekly, extra } = this.calendar;
    const lastExtra = extra.reduce((latest, span) => Math.max(latest, span.fromHour), 0);
    const comesAgain = weekly.some((span) => span.toHour > span.fromHour);
    if (!comesAgain && toMilliseconds(lastExtra) < this.weeks * MILLISECONDS_PER_WEEK) return false;
    this.weeks *= 2;
    this.writeOut();
    return true;
  }

  private writeOut(): void {
    const closingOf = new Map<number, number>();
    const lastDay = this.weeks * 7;
    for (const span of spansOf(this.calendar, this.weeks)) {
      for (let from = span.from; from < span.to; from += MILLISECONDS_PER_DAY) {
        const day = Math.floor(from / MILLISECONDS_PER_DAY);
        if (day < 0 || day >= lastDay) continue;
        const closing = this.localTime.toElapsed(Math.min(from + MILLISECONDS_PER_DAY, span.to));
        closingOf.set(day, Math.max(closingOf.get(day) ?? 0, closing));
      }
    }
    const entries = [...closingOf].sort((a, b) => a[0] - b[0]);
    this.days = Float64Array.from(entries, (entry) => entry[0]);
    this.closingTimes = Float64Array.from(entries, (entry) => entry[1]);
    this.firstFrom = new Int32Array(lastDay);
    let position = 0;
    for (let day = 0; day < lastDay; day++) {
      while (position < this.days.length && this.days[position] < day) position++;
      this.firstFrom[day] = position;
    }
  }
}

/**
 * The working days of a calendar. A working day is a day on which a window starts; its closing time is when
 * the last of these windows ends, which for a night shift is on the morning after. A window longer than a day
 * is one working day for each 24 hours begun, so that a calendar open day and night closes each midnight.
 *
 * @param calendar the lab calendar, in local time
 * @param localTime local time of the lab
 * @param horizonMilliseconds how far promises are expected to reach; one that reaches further takes longer
 */
export function createWorkingDays(
  calendar: WorkingCalendar,
  localTime: LocalTime,
  horizonMilliseconds: number,
): WorkingDays {
  return new CalendarDays(calendar, localTime, horizonMilliseconds);
}
