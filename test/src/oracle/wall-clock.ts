import type { ClockChange } from '@buildweek/model';
import { minutes } from './minutes.ts';

/**
 * The elapsed minute at which the clock on the wall shows a local minute. A local time that is skipped is
 * read by the clock before the change; one that comes twice is the first of the two (RFC 5545, section 3.3.5).
 *
 * @param local minutes since the start of the plan by the clock on the wall
 */
export function elapsedOf(local: number, changes: readonly ClockChange[]): number {
  let offset = 0;
  for (const change of changes) {
    const changesAt = minutes(change.atHours);
    if (local - offset < changesAt) return local - offset;
    const next = minutes(change.localMinusElapsedHours);
    if (local - next < changesAt) return local - offset;
    offset = next;
  }
  return local - offset;
}

/** What the clock on the wall shows, in minutes since the start of the plan. */
export function localOf(elapsed: number, changes: readonly ClockChange[]): number {
  let offset = 0;
  for (const change of changes) {
    if (minutes(change.atHours) <= elapsed) offset = minutes(change.localMinusElapsedHours);
  }
  return elapsed + offset;
}
