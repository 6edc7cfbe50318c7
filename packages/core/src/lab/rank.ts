/** What decides who is served first. Smaller is earlier, field by field in this order. */
export interface Rank {
  /** 0 for rush, 1 for normal. */
  rush: number;
  /** Rank of the kind of work: 0 is served first. */
  kind: number;
  /** Promise; infinite without one. */
  dueAt: number;
  jobNumber: number;
  /** Order of becoming ready, for what is equal in all else. */
  order: number;
}

/** @returns whether `a` is served before `b`; false when they are equal */
export function isBefore(a: Rank, b: Rank): boolean {
  if (a.rush !== b.rush) return a.rush < b.rush;
  if (a.kind !== b.kind) return a.kind < b.kind;
  if (a.dueAt !== b.dueAt) return a.dueAt < b.dueAt;
  if (a.jobNumber !== b.jobNumber) return a.jobNumber < b.jobNumber;
  return a.order < b.order;
}
