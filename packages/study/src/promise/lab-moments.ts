import { createLocalTime, createWorkingDays, MILLISECONDS_PER_HOUR, type WorkingDays } from '@buildweek/core';
import type { DueRule, Lab } from '@buildweek/model';
import type { Moment } from '@buildweek/results';

const MINUTE = 60_000;
const WEEKS_AHEAD = 26;

/** Times of a play from a state of the lab, as moments on its wall clock, and its closing times. */
export class LabMoments {
  /** Elapsed milliseconds since the start of the plan. */
  readonly now: number;
  private readonly startsAt: number;
  private readonly localTime: ReturnType<typeof createLocalTime>;
  private readonly workingDays: WorkingDays;

  /**
   * @param lab its state holds now
   * @throws RangeError when the start of the plan is no date
   */
  constructor(lab: Lab) {
    this.startsAt = Date.parse(`${lab.startDate}T00:00Z`);
    if (Number.isNaN(this.startsAt)) throw new RangeError(`"${lab.startDate}" is no date.`);
    this.localTime = createLocalTime(lab.clockChanges);
    this.now = this.localTime.toElapsed(stateHour(lab) * MILLISECONDS_PER_HOUR);
    const calendar = lab.calendars.find(({ name }) => name === lab.labCalendar);
    if (calendar === undefined) throw new Error(`There is no calendar "${lab.labCalendar}" in the lab.`);
    this.workingDays = createWorkingDays(
      calendar,
      this.localTime,
      WEEKS_AHEAD * 7 * 24 * MILLISECONDS_PER_HOUR,
    );
  }

  /** Rounded up to the minute. @param time elapsed milliseconds, finite */
  moment(time: number): Moment {
    const local = this.localTime.toLocal(time);
    const shown = new Date(this.startsAt + Math.ceil(local / MINUTE) * MINUTE).toISOString();
    return {
      at: `${shown.slice(0, 10)} ${shown.slice(11, 16)}`,
      hours: (time - this.now) / MILLISECONDS_PER_HOUR,
    };
  }

  /** The first closing time of the lab that is not before a time; Infinity when it never closes again. */
  closingFrom(time: number): number {
    // The rule without days gives the first closing after its time, so it is asked from a moment before.
    for (let days = 0, from = this.now; ; days++) {
      const closing = this.workingDays.dueAfter(from, { kind: 'working days', days, cutOffHour: null });
      if (closing >= time || closing === Number.POSITIVE_INFINITY) return closing;
    }
  }

  /** When what is asked for now is due by a rule; null: no promise. */
  dueBy(rule: DueRule): number | null {
    const due = this.workingDays.dueAfter(this.now, rule);
    return Number.isFinite(due) ? due : null;
  }

  /** Local hours since the start of the plan, as the state of a lab has them. */
  localHours(time: number): number {
    return this.localTime.toLocal(time) / MILLISECONDS_PER_HOUR;
  }

  /** Elapsed milliseconds of local hours since the start of the plan. */
  elapsed(localHours: number): number {
    return this.localTime.toElapsed(localHours * MILLISECONDS_PER_HOUR);
  }
}

/** Local hours since the start of the plan at which the state of the lab holds. */
export function stateHour({ initialState }: Lab): number {
  return initialState.atHour ?? 0;
}
