import type { Distribution } from '@buildweek/model';
import { MILLISECONDS_PER_HOUR } from './clock.ts';
import { createSampler, type Sampler } from './sampler.ts';

/** A stream of arrival times, drawn one after the other by inversion. */
export interface Arrivals {
  /**
   * @param afterMilliseconds elapsed time of the arrival before (0 or the start of the plan for the first), as
   *   it came out of here: not rounded, so that rounding does not add up
   * @param u strictly between 0 and 1; a larger u never gives an earlier arrival
   * @returns elapsed milliseconds of the next arrival, not rounded; Infinity when none will come
   */
  next(afterMilliseconds: number, u: number): number;
}

class RenewalArrivals implements Arrivals {
  private readonly gap: Sampler;

  constructor(gap: Sampler) {
    this.gap = gap;
  }

  next(afterMilliseconds: number, u: number): number {
    return afterMilliseconds + this.gap.sample(u) * MILLISECONDS_PER_HOUR;
  }
}

/** @param gap hours between arrivals, day and night; the first gap begins with the plan */
export function createRenewalArrivals(gap: Distribution): Arrivals {
  return new RenewalArrivals(createSampler(gap));
}
