import type { SimulationSettings } from '@buildweek/core';
import type { Economics, Lab, StudySettings, Target } from '@buildweek/model';
import type { Run } from '@buildweek/results';
import type { ReplicationExecutor, StopSignal } from './executor.ts';
import { inOrder } from './in-order.ts';
import { precisionOf } from './precision.ts';
import { StudySums } from './reduce/study-sums.ts';

/** The replications of a study, summed up. */
export interface PlayedReplications {
  /** Null when not one was finished. */
  readonly sums: StudySums | null;
  readonly stopped: Run['stopped'];
  /** Half width reached, as a share of the value; null when none was asked for, or there is no estimate. */
  readonly precisionReached: number | null;
}

/** What a study asks of every replication. */
export type ReplicationTemplate = Omit<SimulationSettings, 'replication'>;

/**
 * Plays a fixed number of replications, or goes on until a precision or the limit is reached. The precision is
 * looked at after 20, 40, 80, … replications, whoever plays them, so that the end does not depend on the workers.
 */
export async function playReplications(
  lab: Lab,
  settings: StudySettings,
  template: ReplicationTemplate,
  executor: ReplicationExecutor,
  onReplication: (done: number, total: number) => void,
  stop: StopSignal | null,
  targets: readonly Target[] = [],
  economics: Economics | null = null,
): Promise<PlayedReplications> {
  const { precision } = settings;
  const limit = precision === null ? (settings.replications ?? 0) : settings.replicationLimit;
  let sums: StudySums | null = null;
  let done = 0;
  let reached: number | null = null;
  for (const target of looks(limit, precision !== null)) {
    const wanted = Array.from({ length: target - done }, (_, index) => ({
      ...template,
      replication: done + index,
    }));
    for await (const history of inOrder(executor.run(lab, wanted, stop), done)) {
      sums ??= new StudySums(lab, history, targets, economics);
      sums.add(history);
      onReplication(sums.replications, limit);
    }
    done = sums?.replications ?? 0;
    if (precision !== null && sums !== null) {
      const found = precisionOf(sums.jobs.all(settings.level), precision);
      reached = found.relativeHalfWidth;
      if (done === target && found.reached)
        return { sums, stopped: 'precision reached', precisionReached: reached };
    }
    if (done < target) return { sums, stopped: 'stopped by the user', precisionReached: reached };
  }
  const stopped = precision === null ? 'number of replications reached' : 'limit reached';
  return { sums, stopped, precisionReached: reached };
}

/** Replications are asked for in portions, so that a very long list of them never stands in memory. */
const LARGEST_PORTION = 1000;

/** Numbers of replications up to which is played at a stretch; the precision is looked at after each. */
function looks(limit: number, sequential: boolean): number[] {
  const sizes: number[] = [];
  const first = sequential ? 20 : LARGEST_PORTION;
  for (let size = first; size < limit; size += sequential ? size : LARGEST_PORTION) sizes.push(size);
  return [...sizes, limit];
}
