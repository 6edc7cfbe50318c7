/** Measures whose precision a study can be asked for; lead times are those of all jobs. */
export const PRECISION_MEASURES = [
  'mean lead time',
  'p50 lead time',
  'p80 lead time',
  'p90 lead time',
  'p95 lead time',
  'share on time',
] as const;
export type PrecisionMeasure = (typeof PRECISION_MEASURES)[number];

/** How a lab is to be played: what a scenario says beside the lab, and a study goes by. */
export interface StudySettings {
  readonly seed: string;
  /** Measured weeks of each replication. */
  readonly weeks: number;
  /** Weeks before the measured ones that are left out; `auto`: chosen from a pilot. */
  readonly ignoredWeeks: number | 'auto';
  /** Weeks after the measured ones in which their jobs may still finish. */
  readonly capWeeks: number;
  /** A fixed number of replications, at least 20; null when `precision` decides. */
  readonly replications: number | null;
  /** Replications go on until this interval is narrow enough; null when their number is fixed. */
  readonly precision: PrecisionAsked | null;
  /** At most so many replications when `precision` decides. */
  readonly replicationLimit: number;
  /** Confidence level of every interval, 0 to 1. */
  readonly level: number;
}

export interface PrecisionAsked {
  readonly measure: PrecisionMeasure;
  /** Half width of the interval as a share of the value. */
  readonly relativeHalfWidth: number;
}
