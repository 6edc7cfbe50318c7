import {
  createLocalTime,
  createSimulator,
  type LocalTime,
  MILLISECONDS_PER_WEEK,
  type StateSpan,
  type TraceEntry,
} from '@buildweek/core';
import type { Lab } from '@buildweek/model';
import type { Run } from '@buildweek/results';
import { startEarlier } from '../start-earlier.ts';

/** One replication of a study, played again with everything written down. */
export interface Replay {
  /** Times are milliseconds since the stated start of the plan; what was left out in front is negative. */
  readonly entries: readonly TraceEntry[];
  /** Who was in which state when, by the same time. */
  readonly states: readonly StateSpan[];
  /** From 0. */
  readonly replication: number;
  /** Measured weeks. */
  readonly weeks: number;
  /** When the replication ended: milliseconds since the stated start of the plan. */
  readonly endedAt: number;
  /** From these times to what the clock on the wall of the lab shows, and back. */
  readonly localTime: LocalTime;
}

/**
 * Plays one replication again with the trace on. The trace changes nothing, so this is the very replication that
 * went into the results.
 *
 * @param lab the lab of the results
 * @param run how the results were made
 * @param replication from 0 to below `run.replications`
 * @throws RangeError when there was no such replication
 */
export function replayOf(lab: Lab, run: Run, replication: number): Replay {
  if (!(Number.isInteger(replication) && replication >= 0 && replication < run.replications)) {
    throw new RangeError(
      `There is no replication ${replication + 1}: the results have 1 to ${run.replications}.`,
    );
  }
  const ignoredWeeks = run.ignoredWeeks.weeks;
  const { trace, states, endedAt } = createSimulator(startEarlier(lab, ignoredWeeks)).simulate({
    seed: run.seed,
    replication,
    ignoredWeeks,
    weeks: run.weeks,
    capWeeks: run.capWeeks,
    trace: true,
    queueWaits: false,
  });
  const start = ignoredWeeks * MILLISECONDS_PER_WEEK;
  return {
    entries: (trace ?? []).map((entry) => ({
      ...entry,
      time: entry.time - start,
      dueAt: entry.dueAt === null ? null : entry.dueAt - start,
    })),
    states: (states ?? []).map((span) => ({ ...span, from: span.from - start, to: span.to - start })),
    replication,
    weeks: run.weeks,
    endedAt: endedAt - start,
    localTime: createLocalTime(lab.clockChanges),
  };
}
