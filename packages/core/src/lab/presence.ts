import type { Noticing } from '@buildweek/model';
import { toMilliseconds } from '../kernel/clock.ts';
import { union, type WorkingWindows } from '../kernel/working-windows.ts';

/** When anybody at all is on duty, and what follows for what happens while nobody is. */
export class Presence {
  readonly windows: WorkingWindows;
  /** Moments at which somebody comes on duty, ascending. */
  private readonly comings: Float64Array;

  /** @param groups windows of each people group */
  constructor(groups: readonly WorkingWindows[]) {
    this.windows = union(groups);
    this.comings = Float64Array.from(groups.flatMap((group) => [...group.starts])).sort();
  }

  /**
   * When people learn of something that happens at a time.
   *
   * @returns elapsed milliseconds, at or after `time`; Infinity when nobody ever comes
   */
  noticedAt(noticing: Noticing, time: number): number {
    switch (noticing.kind) {
      case 'monitored':
        return time;
      case 'when somebody is in':
        return this.windows.contains(time) ? time : this.nextStart(this.windows.starts, time);
      case 'on arrival':
        return this.nextStart(this.comings, time);
      case 'rounds':
        return Math.min(
          this.nextStart(this.comings, time),
          this.nextRound(toMilliseconds(noticing.everyHours), time),
        );
    }
  }

  /** Milliseconds of a stretch in which somebody is on duty. */
  attendedWithin(from: number, to: number): number {
    return this.windows.millisecondsBefore(to) - this.windows.millisecondsBefore(from);
  }

  /** The next round in the window that contains the time; Infinity when nobody is in or no round is left in it. */
  private nextRound(every: number, time: number): number {
    const index = this.windows.indexAt(time);
    if (index >= this.windows.length || this.windows.starts[index] > time) return Number.POSITIVE_INFINITY;
    const start = this.windows.starts[index];
    const round = start + Math.ceil((time - start) / every) * every;
    return round < this.windows.ends[index] ? round : Number.POSITIVE_INFINITY;
  }

  private nextStart(starts: Float64Array, time: number): number {
    let low = 0;
    let high = starts.length;
    while (low < high) {
      const middle = (low + high) >>> 1;
      if (starts[middle] >= time) high = middle;
      else low = middle + 1;
    }
    return low < starts.length ? starts[low] : Number.POSITIVE_INFINITY;
  }
}

/**
 * Windows in which a stretch of running fits as a whole.
 *
 * @param windows when running is allowed
 * @param time earliest start
 * @param duration milliseconds
 * @returns the earliest start at or after `time`; Infinity when there is none
 */
export function earliestFit(windows: WorkingWindows, time: number, duration: number): number {
  for (let index = windows.indexAt(time); index < windows.length; index++) {
    const start = Math.max(time, windows.starts[index]);
    if (start + duration <= windows.ends[index]) return start;
  }
  return Number.POSITIVE_INFINITY;
}

/** When so many milliseconds of the windows have passed since a time; null windows are open day and night. */
export function afterOpenTime(windows: WorkingWindows | null, time: number, duration: number): number {
  if (windows === null) return time + duration;
  let left = duration;
  for (let index = windows.indexAt(time); index < windows.length; index++) {
    const start = Math.max(time, windows.starts[index]);
    const length = windows.ends[index] - start;
    if (left <= length) return start + left;
    left -= length;
  }
  return Number.POSITIVE_INFINITY;
}
