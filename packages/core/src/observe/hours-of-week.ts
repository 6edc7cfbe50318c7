import { HOURS_PER_WEEK, MILLISECONDS_PER_HOUR } from '../kernel/clock.ts';
import { addStay, IntervalRing } from '../kernel/interval-ring.ts';
import type { LocalTime } from '../kernel/local-time.ts';
import type { MeasuredWindow } from './window.ts';

/**
 * An average over the measured weeks for each hour of the local week. An hour that the clock skips in one of the
 * weeks, or shows twice, counts as often as it was there.
 */
export class HoursOfWeek {
  private readonly sums = new IntervalRing(MILLISECONDS_PER_HOUR, HOURS_PER_WEEK);
  private readonly window: MeasuredWindow;
  private readonly localTime: LocalTime;

  constructor(window: MeasuredWindow, localTime: LocalTime) {
    this.window = window;
    this.localTime = localTime;
  }

  /** Adds a stretch, clipped to the measured window. */
  add(from: number, to: number, weight: number): void {
    const start = Math.max(from, this.window.start);
    const end = Math.min(to, this.window.end);
    if (end > start) addStay(this.sums, this.localTime, start, end, weight);
  }

  /** @returns 168 averages, Monday 00:00 first */
  averages(): Float64Array {
    const lengths = this.window.hoursOfWeek(this.localTime);
    const averages = this.sums.totals();
    for (let hour = 0; hour < HOURS_PER_WEEK; hour++) {
      averages[hour] = lengths[hour] === 0 ? 0 : averages[hour] / lengths[hour];
    }
    return averages;
  }
}
