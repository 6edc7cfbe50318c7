import type { FollowedJob, History } from '@buildweek/core';
import type { Lab } from '@buildweek/model';
import { inOrder } from '../in-order.ts';
import type { PromisePlay } from './promise-question.ts';

/** What became of the jobs in the lab in every play. */
export interface PlayedJobs {
  /** By replication, then by job. */
  readonly jobs: readonly (readonly FollowedJob[])[];
}

/**
 * Plays the lab on from its state until the first so many jobs are done, in every replication.
 *
 * @param count jobs to follow, at least 1
 * @param awaited of these jobs the only one whose end is waited for; null: all of them
 * @param written elapsed milliseconds until which everything is written down, beside hours by step; null: neither
 * @param onHistory sees every history, in order
 * @returns null when it was stopped
 */
export async function playJobs(
  lab: Lab,
  count: number,
  awaited: number | null,
  play: PromisePlay,
  written: { readonly traceUntil: number | null } | null = null,
  onHistory: (history: History) => void = () => {},
): Promise<PlayedJobs | null> {
  const { seed, replications, lastWeeks, executor, stop, onReplication } = play;
  const settings = Array.from({ length: replications }, (_, replication) => ({
    seed,
    replication,
    ignoredWeeks: 0,
    weeks: 1,
    capWeeks: lastWeeks - 1,
    queueWaits: false,
    followJobs: count,
    ...(awaited === null ? {} : { awaitedJob: awaited }),
    followSteps: written !== null,
    trace: written !== null && written.traceUntil !== null,
    ...(written === null || written.traceUntil === null ? {} : { traceUntil: written.traceUntil }),
  }));
  const jobs: (readonly FollowedJob[])[] = [];
  for await (const history of inOrder(executor.run(lab, settings, stop), 0)) {
    jobs.push(history.followed ?? []);
    onHistory(history);
    onReplication();
  }
  return jobs.length === replications ? { jobs } : null;
}

/** When one job ended in every play, elapsed milliseconds; what was cancelled counts as ended then. */
export function endingsOf({ jobs }: PlayedJobs, job: number): number[] {
  return jobs.map((followed) => followed[job]?.endedAt ?? Number.POSITIVE_INFINITY);
}
