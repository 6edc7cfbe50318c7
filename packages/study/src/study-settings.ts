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

/** How a lab is to be played. */
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

/** @throws RangeError with a sentence for the user when settings cannot be played */
export function checkStudySettings(settings: StudySettings): void {
  const whole = (name: string, value: number, fewest: number): void => {
    if (!(Number.isInteger(value) && value >= fewest)) {
      throw new RangeError(`The ${name} must be a whole number of at least ${fewest}, not ${value}.`);
    }
  };
  whole('number of measured weeks', settings.weeks, 1);
  whole('number of weeks to finish', settings.capWeeks, 0);
  if (settings.ignoredWeeks !== 'auto') whole('number of ignored weeks', settings.ignoredWeeks, 0);
  // No interval rests on fewer, so a shorter run could say nothing.
  const { replications, precision } = settings;
  if (precision === null) whole('number of replications', replications ?? Number.NaN, 20);
  else {
    whole('limit of replications', settings.replicationLimit, 20);
    if (!(precision.relativeHalfWidth > 0)) {
      throw new RangeError(`The precision must be above 0, not ${precision.relativeHalfWidth}.`);
    }
  }
  if (!(settings.level > 0 && settings.level < 1)) {
    throw new RangeError(`The confidence level must lie between 0 and 1, not ${settings.level}.`);
  }
}
