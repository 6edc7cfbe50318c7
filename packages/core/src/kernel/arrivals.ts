import type { ArrivalPattern } from '@buildweek/model';
import { MILLISECONDS_PER_HOUR } from './clock.ts';
import type { LocalTime } from './local-time.ts';
import { PiecewiseArrivals, type PoissonPattern } from './piecewise-arrivals.ts';
import { createSampler, type Sampler } from './sampler.ts';
import type { WeekFactors } from './week-factors.ts';

type RenewalPattern = Extract<ArrivalPattern, { kind: 'renewal' }>;

/**
 * Arrival times, drawn one after the other by inversion from the start of the plan on. It goes on from its own
 * arrivals, not from rounded ones, so that rounding does not add up.
 */
export interface Arrivals {
  /**
   * @param u strictly between 0 and 1; a larger u never gives an earlier arrival
   * @returns elapsed milliseconds of the next arrival, not rounded; Infinity when none will come
   */
  next(u: number): number;
}

class RenewalArrivals implements Arrivals {
  private readonly gap: Sampler;
  private last = 0;

  constructor(gap: Sampler) {
    this.gap = gap;
  }

  next(u: number): number {
    this.last += this.gap.sample(u) * MILLISECONDS_PER_HOUR;
    return this.last;
  }
}

/** @param pattern the gap between arrivals, day and night; the first gap begins with the plan */
export function createRenewalArrivals(pattern: RenewalPattern): Arrivals {
  return new RenewalArrivals(createSampler(pattern.gap));
}

/**
 * @param pattern expected arrivals per week at the start of the plan, their profile over the local week, and
 *   compound growth per month, applied week by week
 * @param localTime local time of the lab; hours that the clock skips bring no arrivals, hours that it shows
 *   twice bring them twice
 * @param factors of the weeks, for a pattern whose weeks vary
 * @throws RangeError when no hour of the profile has a weight
 */
export function createPoissonArrivals(
  pattern: PoissonPattern,
  localTime: LocalTime,
  factors: WeekFactors | null = null,
): Arrivals {
  return new PiecewiseArrivals(pattern, localTime, factors);
}
