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
   * one, and end when they are done instead of when the weeks are over and the cohort is done. What is measured over
   * time then covers less than the weeks.
   */
  readonly followJobs?: number;
  /** Write down as well how long the followed jobs are worked on and wait, step by step. */
  readonly followSteps?: boolean;
  /** Of the followed jobs the only one whose end is waited for; without it, all of them. */
  readonly awaitedJob?: number;
  /** Elapsed milliseconds after which the trace is not written any more; without it, to the end. */
  readonly traceUntil?: number;
}
