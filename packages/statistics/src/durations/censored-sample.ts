/** Durations that were seen to their end, and those of which only a lower bound is known. */
export interface CensoredSample {
  readonly values: readonly number[];
  /** What was still going on after so long: the true value is larger. */
  readonly censored: readonly number[];
}

/** @throws RangeError unless all are positive and finite, and at least so many are seen to their end */
export function checkSample({ values, censored }: CensoredSample, fewest: number): void {
  if (values.length < fewest) {
    throw new RangeError(`At least ${fewest} durations are needed, not ${values.length}`);
  }
  for (const value of [...values, ...censored]) {
    if (!(value > 0 && Number.isFinite(value))) {
      throw new RangeError(`A duration must be positive and finite, not ${value}`);
    }
  }
}
