import { binomialCumulative, gammaQuantile } from '@buildweek/numbers';
import { checkLevel } from '../checks.ts';
import type { Interval } from '../interval.ts';
import { clopperPearsonInterval } from '../proportion.ts';

/**
 * Exact interval of a rate from a count over an exposure (weeks, hours): also for none, where the lower end is 0.
 * Source: F. Garwood, "Fiducial limits for the Poisson distribution", Biometrika 28 (1936), 437–442.
 * @throws RangeError unless the count is whole and at least 0 and the exposure positive
 */
export function poissonRate(count: number, exposure: number, level: number): Interval {
  checkCount(count, exposure);
  checkLevel(level);
  const tail = (1 - level) / 2;
  return {
    value: count / exposure,
    low: count === 0 ? 0 : gammaQuantile(tail, count) / exposure,
    high: gammaQuantile(1 - tail, count + 1) / exposure,
    level,
  };
}

/** Two rates beside each other. */
export interface RateRatio {
  /** First over second, with the exact interval; the upper end is Infinity when the second is 0. */
  readonly ratio: Interval;
  /** Two-sided: of all ways to share out the events that are as rare as the one seen, or rarer. */
  readonly pValue: number;
}

/**
 * Ratio of two Poisson rates: given their sum, the first count is binomial.
 * Source: J. Przyborowski and H. Wilenski, "Homogeneity of results in testing samples from Poisson series", Biometrika 31
 * (1940), 313–323; as poisson.test of R.
 * @throws RangeError when nothing was counted in either
 */
export function rateRatio(
  first: { readonly count: number; readonly exposure: number },
  second: { readonly count: number; readonly exposure: number },
  level: number,
): RateRatio {
  checkCount(first.count, first.exposure);
  checkCount(second.count, second.exposure);
  const events = first.count + second.count;
  if (events === 0) throw new RangeError('Two counts of 0 cannot be compared.');
  const share = clopperPearsonInterval(first.count, events, level);
  const odds = (of: number): number => ((of / (1 - of)) * second.exposure) / first.exposure;
  return {
    ratio: { value: odds(share.value), low: odds(share.low), high: odds(share.high), level },
    pValue: twoSidedBinomial(first.count, events, first.exposure / (first.exposure + second.exposure)),
  };
}

/** Probability of all counts that are as rare as this one, or rarer. */
function twoSidedBinomial(count: number, trials: number, probability: number): number {
  const mass = (of: number): number =>
    binomialCumulative(of, trials, probability) -
    (of === 0 ? 0 : binomialCumulative(of - 1, trials, probability));
  // Equal probabilities must not be told apart by rounding.
  const limit = mass(count) * (1 + 1e-7);
  let total = 0;
  for (let of = 0; of <= trials; of++) {
    const own = mass(of);
    if (own <= limit) total += own;
  }
  return Math.min(1, total);
}

function checkCount(count: number, exposure: number): void {
  if (!(Number.isInteger(count) && count >= 0)) throw new RangeError(`A count must be whole, not ${count}`);
  if (!(exposure > 0 && Number.isFinite(exposure))) {
    throw new RangeError(`An exposure must be positive and finite, not ${exposure}`);
  }
}
