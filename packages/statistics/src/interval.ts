/** A value between two limits that hold the true value with the given confidence. */
export interface Interval {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** Confidence level, two-sided, between 0 and 1. */
  readonly level: number;
}

/** An interval that rests on independent replications. */
export interface Estimate extends Interval {
  readonly kind: 'estimate';
  readonly replications: number;
}

/** No number is given, for the stated reason: a whole sentence. */
export interface Refused {
  readonly kind: 'refused';
  readonly reason: string;
}

/** The value is later than everything that was played. */
export interface Never {
  readonly kind: 'never';
  readonly reason: string;
}

/** Holds one future replication with the given probability. */
export interface Prediction {
  readonly kind: 'prediction';
  readonly low: number;
  readonly high: number;
  readonly level: number;
  readonly replications: number;
}

/** Fewer replications than this make no interval that one could show to somebody. */
export const FEWEST_REPLICATIONS = 20;

/**
 * Turns an interval over replications into an estimate, or refuses when there are fewer than 20 replications.
 * @param interval called only when there are enough
 */
export function estimateOver(replications: number, interval: () => Interval): Estimate | Refused {
  if (replications < FEWEST_REPLICATIONS) return tooFewReplications(replications);
  const { value, low, high, level } = interval();
  return { kind: 'estimate', value, low, high, level, replications };
}

export function tooFewReplications(replications: number): Refused {
  return refused(
    `An interval needs at least ${FEWEST_REPLICATIONS} replications; there are ${replications}.`,
  );
}

export function refused(reason: string): Refused {
  return { kind: 'refused', reason };
}
