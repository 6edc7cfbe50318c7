import type { ClockChange } from '@buildweek/model';
import { toMilliseconds } from './clock.ts';

/**
 * Local (wall clock) time and elapsed time, both in whole milliseconds since the start of the plan, where
 * they agree. They part company at clock changes.
 */
export interface LocalTime {
  /**
   * Elapsed time at which the clock on the wall shows `localMilliseconds`. A time that the clock skips is
   * read with the offset in force before the gap, so that 02:30 in a gap from 02:00 to 03:00 is half an hour
   * after the change; of a time that the clock shows twice the first is taken (both as in RFC 5545, section
   * 3.3.5, form #3). Times before the start of the plan are read with its offset.
   */
  toElapsed(localMilliseconds: number): number;
  /** What the clock on the wall shows at an elapsed time; it jumps at the very instant of a change. */
  toLocal(elapsedMilliseconds: number): number;
  /** Elapsed time of the first clock change strictly after the given elapsed time; Infinity when none is left. */
  nextChange(elapsedMilliseconds: number): number;
}

class ChangingClock implements LocalTime {
  /** Elapsed times of the changes, and the offsets: `offsets[i]` is in force before `changes[i]`. */
  private readonly changes: Float64Array;
  private readonly offsets: Float64Array;

  constructor(changes: Float64Array, offsets: Float64Array) {
    this.changes = changes;
    this.offsets = offsets;
  }

  toElapsed(localMilliseconds: number): number {
    const { changes, offsets } = this;
    let stretch = 0;
    while (stretch < changes.length && localMilliseconds - offsets[stretch] >= changes[stretch]) stretch++;
    const elapsed = localMilliseconds - offsets[stretch];
    // Past the end of one stretch and before the beginning of the next: the clock skips this time.
    if (stretch > 0 && elapsed < changes[stretch - 1]) return localMilliseconds - offsets[stretch - 1];
    return elapsed;
  }

  toLocal(elapsedMilliseconds: number): number {
    return elapsedMilliseconds + this.offsets[this.stretchAt(elapsedMilliseconds)];
  }

  nextChange(elapsedMilliseconds: number): number {
    const stretch = this.stretchAt(elapsedMilliseconds);
    return stretch < this.changes.length ? this.changes[stretch] : Number.POSITIVE_INFINITY;
  }

  /** There are two changes a year: walking along them is as quick as any search. */
  private stretchAt(elapsedMilliseconds: number): number {
    const { changes } = this;
    let stretch = 0;
    while (stretch < changes.length && elapsedMilliseconds >= changes[stretch]) stretch++;
    return stretch;
  }
}

/**
 * @param clockChanges the changes of the lab's zone, ascending; none for a zone without clock changes
 * @throws RangeError when the changes are not ascending
 */
export function createLocalTime(clockChanges: readonly ClockChange[]): LocalTime {
  const changes = Float64Array.from(clockChanges, (change) => toMilliseconds(change.atHours));
  const offsets = Float64Array.from([
    0,
    ...clockChanges.map((change) => toMilliseconds(change.localMinusElapsedHours)),
  ]);
  for (let index = 1; index < changes.length; index++) {
    if (!(changes[index] > changes[index - 1])) throw new RangeError('Clock changes must be ascending.');
  }
  return new ChangingClock(changes, offsets);
}
