import { binomialCumulative } from '@buildweek/numbers';

/** Numbers of successes that chance allows. */
export interface Band {
  readonly fewest: number;
  readonly most: number;
}

/**
 * How many of independent intervals may hold when each does so with the probability of its level: two-sided binomial
 * limits, outside of which a right method falls once in a thousand times.
 */
export function acceptanceBand(repetitions: number, level: number): Band {
  const tail = 0.0005;
  let fewest = 0;
  while (binomialCumulative(fewest, repetitions, level) < tail) fewest++;
  let most = fewest;
  while (binomialCumulative(most, repetitions, level) < 1 - tail) most++;
  return { fewest, most };
}
