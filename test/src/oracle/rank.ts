import type { WorkKind } from '@buildweek/model';
import type { Floor, Load, Task } from './floor.ts';
import { rankOfUpkeep } from './rules.ts';

/** Who is served first, without regard to the kind of work: smaller is earlier. */
export interface Rank {
  /** -1 for a repair, 0 for rush, 1 for all else. */
  readonly rush: -1 | 0 | 1;
  readonly due: number;
  readonly job: number;
}

/** The best rank among all jobs in the loads. */
export function rankOf(loads: readonly Load[]): Rank {
  let best: Rank | null = null;
  for (const load of loads) {
    for (const lot of load.lots) {
      if (best === null || compareRanks(lot.job.rank, best) < 0) best = lot.job.rank;
    }
  }
  if (best === null) throw new Error('Nothing has no rank.');
  return best;
}

export function rankOfTask(task: Task): Rank {
  return task.upkeep === null ? rankOf(task.loads) : rankOfUpkeep(task.upkeep);
}

interface Served {
  readonly rank: Rank;
  readonly kind: WorkKind;
}

/** Who is served first of two, the kind of work included; 0 when no rule says so. */
export function compareServed(floor: Floor, one: Served, other: Served): number {
  const { order } = floor.lab.dispatch;
  return (
    compare(one.rank.rush, other.rank.rush) ||
    compare(order.indexOf(one.kind), order.indexOf(other.kind)) ||
    compare(one.rank.due, other.rank.due) ||
    compare(one.rank.job, other.rank.job)
  );
}

function compareRanks(one: Rank, other: Rank): number {
  return compare(one.rush, other.rush) || compare(one.due, other.due) || compare(one.job, other.job);
}

export function compareLoads(one: Load, other: Load): number {
  return compareRanks(rankOf([one]), rankOf([other])) || compare(one.readyOrder, other.readyOrder);
}

/** Works for infinite numbers too. */
export function compare(one: number, other: number): number {
  return one === other ? 0 : one < other ? -1 : 1;
}
