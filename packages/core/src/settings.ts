/** What a replication is asked for, beside the lab. */
export interface SimulationSettings {
  readonly seed: string;
  /** Replications are numbered from 0; each has streams of its own. */
  readonly replication: number;
  /** Weeks at the beginning of the plan that are played but not measured. */
  readonly ignoredWeeks: number;
  /** Measured weeks. */
  readonly weeks: number;
  /** Weeks after the measured ones in which jobs of the cohort may still finish. */
  readonly capWeeks: number;
  /** Write down every step of every job. Changes nothing else. */
  readonly trace: boolean;
  /** Keep every single wait in every queue, for percentiles of waits. */
  readonly queueWaits: boolean;
  /**
   * Write down what becomes of the first so many jobs (those that stand in the lab at the start come first), one by
   * one, and end when all of them are done instead of when the cohort is; never before the measured weeks are over.
   */
  readonly followJobs?: number;
  /** Elapsed milliseconds after which the trace is not written any more; without it, to the end. */
  readonly traceUntil?: number;
}
