import type { Estimate } from '@buildweek/results';
import type { Played } from './play.ts';

/** A published value, and where it stands in what a scenario gives. */
export interface PublishedValue {
  readonly what: string;
  readonly truth: number;
  /** A mean or share may be known to 1 %, a point or spread of a distribution to 2 %, at most. */
  readonly kind: 'mean' | 'share' | 'percentile' | 'deviation';
  readonly estimate: (played: Played) => Estimate;
  /** Another limit of the standard error, where the case says why. */
  readonly sharpness?: number;
}

/** A case of the collected checks, worded as a scenario. */
export interface PublishedCase {
  /** Its number in the collected checks, and its name. */
  readonly title: string;
  /** Where the values come from, and how sure that is. */
  readonly source: string;
  /** The whole scenario file. The seed was written down before anything was played. */
  readonly scenario: string;
  readonly values: readonly PublishedValue[];
  /** Whether the number of jobs in the lab is followed through the trace. */
  readonly traced?: boolean;
}
