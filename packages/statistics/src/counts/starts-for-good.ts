import { binomialCumulative } from '@buildweek/numbers';

const MOST_STARTS = 1e6;

/** How many pieces to start for so many good ones, when each comes out good with one probability. */
export interface Starts {
  /** On average, when bad ones are started again one by one: n / p. */
  readonly expected: number;
  /** Fewest that give enough good ones with at least the stated probability, when all are started at once. */
  readonly fewest: number;
}

/**
 * Source: negative binomial law, W. Feller, An Introduction to Probability Theory and Its Applications 1 (1968), section VI.8.
 * @throws RangeError unless good is whole and positive, 0 < share ≤ 1 and 0 < probability < 1
 */
export function startsForGood(good: number, share: number, probability: number): Starts {
  if (
    !(Number.isInteger(good) && good > 0 && share > 0 && share <= 1 && probability > 0 && probability < 1)
  ) {
    throw new RangeError(
      `${good} good pieces of a share of ${share} with probability ${probability} cannot be`,
    );
  }
  let fewest = good;
  while (enoughGood(fewest, good, share) < probability && fewest < MOST_STARTS) fewest++;
  return { expected: good / share, fewest };
}

/** Probability that so many starts give at least so many good pieces. */
export function enoughGood(starts: number, good: number, share: number): number {
  return 1 - binomialCumulative(good - 1, starts, share);
}
