import type { LocalTime } from '@buildweek/core';
import { MONTH_NAMES } from '@buildweek/results';

const DAY = 86_400_000;
const MINUTE = 60_000;
const WEEKDAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'];

/** Tells the moments of a replayed plan by the calendar and the clock on the wall of the lab, to the minute. */
export class StoryClock {
  private readonly start: number;
  private readonly localTime: LocalTime;

  /**
   * @param startDate the Monday on which the plan starts, `YYYY-MM-DD`
   * @throws RangeError when it is no date
   */
  constructor(startDate: string, localTime: LocalTime) {
    this.start = Date.parse(`${startDate}T00:00Z`);
    if (Number.isNaN(this.start)) throw new RangeError(`"${startDate}" is no date.`);
    this.localTime = localTime;
  }

  /** `Mon 1 Mar 07:12`. @param time milliseconds since the stated start of the plan */
  moment(time: number): string {
    const date = this.dateOf(time);
    const day = `${weekdayOf(date).slice(0, 3)} ${date.getUTCDate()} ${monthOf(date).slice(0, 3)}`;
    return `${day} ${this.timeOfDay(time)}`;
  }

  /** `07:12` on the day of `since`, else with the day in front. */
  until(time: number, since: number): string {
    return this.dayOf(time) === this.dayOf(since) ? this.timeOfDay(time) : this.moment(time);
  }

  timeOfDay(time: number): string {
    return this.dateOf(time).toISOString().slice(11, 16);
  }

  /** `Monday 1 March 2027`. */
  day(time: number): string {
    const date = this.dateOf(time);
    return `${weekdayOf(date)} ${date.getUTCDate()} ${monthOf(date)} ${date.getUTCFullYear()}`;
  }

  /** Number of the day, for telling days apart. */
  dayOf(time: number): number {
    return Math.floor(this.dateOf(time).getTime() / DAY);
  }

  /** Local date and time of ISO 8601, `2027-03-01T07:12`. */
  iso(time: number): string {
    return this.dateOf(time).toISOString().slice(0, 16);
  }

  private dateOf(time: number): Date {
    const shown = this.start + this.localTime.toLocal(time);
    return new Date(Math.floor(shown / MINUTE) * MINUTE);
  }
}

function weekdayOf(date: Date): string {
  return WEEKDAYS[date.getUTCDay()] ?? '';
}

function monthOf(date: Date): string {
  return MONTH_NAMES[date.getUTCMonth()] ?? '';
}
