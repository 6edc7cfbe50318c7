import type { EstimateOrRefused, Results } from '@buildweek/results';

/** A value known from theory, and where it stands in the results of a scenario. */
export interface TheoryValue {
  readonly what: string;
  readonly unit: 'hours' | 'jobs' | 'share';
  readonly theory: number;
  /** Undefined when the results do not have this measure. */
  readonly read: (results: Results) => EstimateOrRefused | undefined;
}

/** A queue that theory has an answer for, worded as a scenario. */
export interface TheoryCase {
  readonly name: string;
  /** Where the values come from, and how sure that is. */
  readonly source: string;
  /** The scenario file. What it says of replications and weeks makes the standard error small enough to tell. */
  readonly scenario: string;
  readonly values: readonly TheoryValue[];
}

/** Replications of every case: enough for Student's t to be near the normal law. */
export const REPLICATIONS = 100;

/**
 * The head of a scenario of a case.
 * @param weeks so many that the standard error is 1 % at most for a mean, 2 % for a percentile
 * @param ignoredWeeks many times the relaxation time of the queue, which starts empty
 */
export function head(name: string, weeks: number, ignoredWeeks: number): string {
  return `buildweek: 1
name: ${name}
simulate: { weeks: ${weeks}, ignored weeks: ${ignoredWeeks}, replications: ${REPLICATIONS} }
`;
}
