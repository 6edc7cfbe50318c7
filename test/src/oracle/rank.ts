import type { Load, Lot } from './floor.ts';
import { first } from './floor.ts';

/** Who is served first, without regard to the kind of work: smaller is earlier. */
export interface Rank {
  readonly rush: 0 | 1;
  readonly due: number;
  readonly job: number;
}

/** The best rank among all jobs in the loads. */
export function rankOf(loads: readonly Load[]): Rank {
  const ranks = loads.flatMap((load) => load.lots.map(rankOfLot));
  return first(ranks.sort(compareRanks));
}

function rankOfLot(lot: Lot): Rank {
  return { rush: lot.job.rush ? 0 : 1, due: lot.job.dueAt ?? Infinity, job: lot.job.number };
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
