import type { CountDistribution, Duration } from './distribution.ts';

/**
 * When jobs of a demand stream are made outside instead of in the lab: judged once, when a job arrives. A job that is
 * sent out takes part in nothing of the lab; its lead time is drawn at arrival, sent out or not, so that two labs on
 * the same seed stay in step. Any condition that holds is enough.
 */
export interface SendOutRule {
  /** Whatever happens: a process that the lab does not own. */
  readonly always: boolean;
  /** When at least so many jobs wait for the machine group of the first build of the route; null: no such limit. */
  readonly waitingJobs: number | null;
  /** When the job would probably miss its promise in the lab. */
  readonly promiseAtRisk: boolean;
  readonly leadTime: OutsideLeadTime;
}

/** From asking to having the parts: by the clock, or to closing time of the n-th working day of the lab calendar. */
export type OutsideLeadTime =
  | { readonly kind: 'clock'; readonly duration: Duration }
  | { readonly kind: 'working days'; readonly days: CountDistribution };
