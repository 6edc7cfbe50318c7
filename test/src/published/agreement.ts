import {
  ARRIVALS,
  BATCHES,
  CALENDARS,
  LAWS_OF_TIMES,
  ORDERS,
  QUEUES,
  SERVICE_TIMES,
  TROUBLES,
} from './cases/index.ts';
import type { Played } from './play.ts';
import type { PublishedCase, PublishedValue } from './published-case.ts';
import { standardErrorOf, verdictOf } from './verdict.ts';

/** All values that are held against theory: they share out one rate of false alarms. */
const ASSERTIONS = [QUEUES, SERVICE_TIMES, ARRIVALS, ORDERS, BATCHES, CALENDARS, TROUBLES, LAWS_OF_TIMES]
  .flat()
  .reduce((sum, one) => sum + one.values.length, 0);

/** Largest standard error, as a share of the published value. */
const SHARPNESS: Readonly<Record<PublishedValue['kind'], number>> = {
  mean: 0.01,
  share: 0.01,
  percentile: 0.02,
  deviation: 0.02,
};

/** How one published value and what was played go together. */
export interface Agreement {
  readonly what: string;
  readonly agrees: boolean;
  readonly isSharp: boolean;
  /** For a reader of a failure. */
  readonly words: string;
}

/** Holds what was played against the values of a case. */
export function agreementsOf({ values }: PublishedCase, played: Played): Agreement[] {
  return values.map(({ what, kind, truth, estimate, sharpness = SHARPNESS[kind] }) => {
    const found = estimate(played);
    const error = standardErrorOf(found, truth) / Math.abs(truth);
    const { score, limit, agrees } = verdictOf(found, truth, ASSERTIONS);
    return {
      what,
      agrees,
      isSharp: error <= sharpness,
      words: `${what}: ${found.value} (standard error ${(100 * error).toFixed(2)} %), published ${truth}; score ${score.toFixed(2)}, limit ${limit.toFixed(2)}`,
    };
  });
}
