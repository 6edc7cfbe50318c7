import type { TraceEntry } from '@buildweek/core';
import type { Replay } from './replay.ts';

const MILLISECONDS_PER_WEEK = 168 * 3_600_000;

/** What happened in one measured week of a replayed replication, in order of time; waits are left out. */
export interface WeekListing {
  /** From 1. */
  readonly week: number;
  readonly entries: readonly TraceEntry[];
}

/**
 * @param week from 1 to the number of measured weeks
 * @throws RangeError when the plan has no such week
 */
export function weekListingOf(replay: Replay, week: number): WeekListing {
  if (!(Number.isInteger(week) && week >= 1 && week <= replay.weeks)) {
    throw new RangeError(`There is no week ${week}: the plan has weeks 1 to ${replay.weeks}.`);
  }
  const from = (week - 1) * MILLISECONDS_PER_WEEK;
  const entries = replay.entries.filter(
    ({ time, what }) => time >= from && time < from + MILLISECONDS_PER_WEEK && what !== 'has waited',
  );
  return { week, entries };
}
