import { HOURS_PER_WEEK, MILLISECONDS_PER_HOUR } from '../kernel/clock.ts';
import { addStay, IntervalRing } from '../kernel/interval-ring.ts';
import type { LocalTime } from '../kernel/local-time.ts';

/** The measured part of a replication: from `start` to before `end`, elapsed milliseconds. */
export class MeasuredWindow {
  readonly start: number;
  readonly end: number;
  readonly weeks: number;
  private lengthOfHours: Float64Array | null = null;

  constructor(start: number, end: number, weeks: number) {
    this.start = start;
    this.end = end;
    this.weeks = weeks;
  }

  /** @returns for each hour of the local week how long it lies in the window; worked out once */
  hoursOfWeek(localTime: LocalTime): Float64Array {
    if (this.lengthOfHours === null) {
      const there = new IntervalRing(MILLISECONDS_PER_HOUR, HOURS_PER_WEEK);
      addStay(there, localTime, this.start, this.end, 1);
      this.lengthOfHours = there.totals();
    }
    return this.lengthOfHours;
  }

  contains(time: number): boolean {
    return time >= this.start && time < this.end;
  }

  /** @returns milliseconds of the stretch from `from` to `to` that lie in the window */
  overlap(from: number, to: number): number {
    const start = Math.max(from, this.start);
    const end = Math.min(to, this.end);
    return end > start ? end - start : 0;
  }
}
