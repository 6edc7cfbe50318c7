import type { WorkingCalendar } from '@buildweek/model';
import { coversWholeWeek, spansOf } from './calendar-spans.ts';
import { MILLISECONDS_PER_WEEK, toHours } from './clock.ts';
import type { LocalTime } from './local-time.ts';

/**
 * Stretches of elapsed time in which people of a calendar are there: ascending, disjoint and not touching.
 * A window contains its start and not its end. Window `i` is `starts[i]` to `ends[i]`, in whole milliseconds
 * since the start of the plan; the last end may be Infinity.
 */
export class WorkingWindows {
  readonly starts: Float64Array;
  readonly ends: Float64Array;
  /** Milliseconds of all windows before the one at the same position. */
  private readonly before: Float64Array;

  constructor(starts: Float64Array, ends: Float64Array) {
    this.starts = starts;
    this.ends = ends;
    this.before = new Float64Array(starts.length);
    for (let index = 1; index < starts.length; index++) {
      this.before[index] = this.before[index - 1] + ends[index - 1] - starts[index - 1];
    }
  }

  get length(): number {
    return this.starts.length;
  }

  /** @returns position of the window that contains the time, or of the next one; `length` when none is left */
  indexAt(milliseconds: number): number {
    const { ends } = this;
    let low = 0;
    let high = ends.length;
    while (low < high) {
      const middle = (low + high) >>> 1;
      if (ends[middle] > milliseconds) high = middle;
      else low = middle + 1;
    }
    return low;
  }

  /** @returns whether somebody is there at the time */
  contains(milliseconds: number): boolean {
    const index = this.indexAt(milliseconds);
    return index < this.starts.length && this.starts[index] <= milliseconds;
  }

  /** @returns milliseconds of the windows that lie before the time */
  millisecondsBefore(milliseconds: number): number {
    const index = this.indexAt(milliseconds);
    const last = this.starts.length - 1;
    if (index > last) return last < 0 ? 0 : this.before[last] + this.ends[last] - this.starts[last];
    return this.before[index] + Math.max(0, milliseconds - this.starts[index]);
  }
}

/**
 * Windows of a calendar from the start of the plan on. Windows that touch or overlap become one; a window
 * that began before the start of the plan is there from 0; across a clock change a window is as much shorter
 * or longer as the clock jumps.
 *
 * @param calendar the calendar, in local time
 * @param localTime local time of the lab
 * @param horizonMilliseconds windows that start at or after this elapsed time are left out; one that starts
 *   before it is given in full. Where somebody is there day and night for good, the last end is Infinity.
 */
export function windowsOf(
  calendar: WorkingCalendar,
  localTime: LocalTime,
  horizonMilliseconds: number,
): WorkingWindows {
  // One week more than asked for, so that a window that meets the horizon is seen to its end.
  const weeks = Math.max(0, Math.ceil(horizonMilliseconds / MILLISECONDS_PER_WEEK)) + 2;
  const pairs: [number, number][] = spansOf(calendar, weeks).map((span) => [
    localTime.toElapsed(span.from),
    localTime.toElapsed(span.to),
  ]);
  const forGood = coversWholeWeek(calendar) ? localTime.toElapsed(weeks * MILLISECONDS_PER_WEEK) : Infinity;
  const merged = merge(pairs).filter((pair) => pair[0] < horizonMilliseconds);
  const last = merged.at(-1);
  if (last !== undefined && last[1] >= forGood) last[1] = Number.POSITIVE_INFINITY;
  return fromPairs(merged);
}

/** @returns the windows in which somebody of any of the lists is there */
export function union(list: readonly WorkingWindows[]): WorkingWindows {
  const pairs: [number, number][] = [];
  for (const { starts, ends } of list) {
    for (let index = 0; index < starts.length; index++) pairs.push([starts[index], ends[index]]);
  }
  return fromPairs(merge(pairs));
}

/**
 * Closing times: ends of windows that are followed by a gap longer than `minimumGapMilliseconds`. What comes
 * after the last window counts as such a gap.
 *
 * @returns elapsed milliseconds, ascending
 */
export function closings(windows: WorkingWindows, minimumGapMilliseconds: number): number[] {
  const { starts, ends } = windows;
  return [...ends].filter((end, index) => {
    const nextStart = index + 1 < starts.length ? starts[index + 1] : Number.POSITIVE_INFINITY;
    return end < Number.POSITIVE_INFINITY && nextStart - end > minimumGapMilliseconds;
  });
}

/** @returns hours of the windows between two elapsed times, in milliseconds, `from` at most `to` */
export function hoursWithin(windows: WorkingWindows, from: number, to: number): number {
  return toHours(windows.millisecondsBefore(to) - windows.millisecondsBefore(from));
}

/** Sorts, clips to the start of the plan, drops what is empty, and makes one of what touches. */
function merge(pairs: readonly (readonly [number, number])[]): [number, number][] {
  const merged: [number, number][] = [];
  for (const [start, end] of [...pairs].sort((a, b) => a[0] - b[0])) {
    const clipped = Math.max(0, start);
    // A span within an hour that the clock skips may come out empty or backwards.
    if (!(end > clipped)) continue;
    const last = merged.at(-1);
    if (last !== undefined && clipped <= last[1]) last[1] = Math.max(last[1], end);
    else merged.push([clipped, end]);
  }
  return merged;
}

function fromPairs(pairs: readonly (readonly [number, number])[]): WorkingWindows {
  return new WorkingWindows(
    Float64Array.from(pairs, (pair) => pair[0]),
    Float64Array.from(pairs, (pair) => pair[1]),
  );
}
