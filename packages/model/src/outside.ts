import type { Distribution, Duration } from './distribution.ts';

/**
 * When jobs of a demand stream are made outside instead of in the lab: judged once, when a job arrives. A job that is
 * sent out takes part in nothing of the lab, but counts as a job of it until it is back; its lead time is drawn at
 * arrival, sent out or not, so that two labs on the same seed stay in step. Any condition that holds is enough; with
 * none nothing is sent out.
 */
export interface SendOutRule {
  /** Whatever happens: a process that the lab does not own. */
  readonly always: boolean;
  /**
   * When more than so many jobs wait for the machine group of the first build of the route, at the instant before the
   * job enters; a job of which only some pieces wait counts by their share. Null: no such limit.
   */
  readonly waitingJobsAbove: number | null;
  /**
   * When the job would probably miss its promise in the lab: when its typical work by the clock, and what its machines
   * typically need for the jobs that go before it, together reach beyond the promise. Never without a promise.
   */
  readonly promiseAtRisk: boolean;
  readonly leadTime: OutsideLeadTime;
}

/** From asking to having the parts: by the clock, or to closing time of the n-th working day of the lab calendar. */
export type OutsideLeadTime =
  | { readonly kind: 'clock'; readonly duration: Duration }
  /** Counted as promises are: after the cut-off the next day counts. */
  | {
      readonly kind: 'working days';
      /** In working days, rounded to whole ones, at least 1. */
      readonly days: Distribution;
      /** Hour of the day; null: none. */
      readonly cutOffHour: number | null;
    };
