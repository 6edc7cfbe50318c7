import type { Band, Estimate, EstimateOrRefused } from '@buildweek/results';
import {
  estimateOver,
  FEWEST_REPLICATIONS,
  type RunningMeans,
  type RunningRatios,
} from '@buildweek/statistics';

/**
 * Estimate of one mean, with no refusal: the study has made sure that there are enough replications.
 * @param most a bound that the true mean cannot pass, as 1 for a share; no measure is below 0
 * @throws RangeError for fewer than 20 replications
 */
export function meanEstimate(
  means: RunningMeans,
  index: number,
  level: number,
  most = Number.POSITIVE_INFINITY,
): Estimate {
  return possible(given(estimateOver(means.replications, () => means.interval(index, level))), most);
}

/** Estimate of one mean that may be below 0; errors as above. */
export function signedEstimate(means: RunningMeans, index: number, level: number): Estimate {
  return given(estimateOver(means.replications, () => means.interval(index, level)));
}

/** Estimate of a ratio whose denominator is known to be there; errors as above. */
export function ratioEstimate(ratios: RunningRatios, index: number, level: number): Estimate {
  return possible(given(estimateOver(ratios.replications, () => ratios.interval(index, level))));
}

/** Estimate of a ratio, or why there is none. */
export function ratioOrRefused(
  ratios: RunningRatios,
  index: number,
  level: number,
  withoutDenominator: string,
  most = Number.POSITIVE_INFINITY,
): EstimateOrRefused {
  if (!ratios.hasDenominator) return { kind: 'refused', reason: withoutDenominator };
  const estimate = estimateOver(ratios.replications, () => ratios.interval(index, level));
  return estimate.kind === 'estimate' ? possible(estimate, most) : estimate;
}

/** A curve of means with its interval at each point. */
export function meanBand(means: RunningMeans, level: number): Band {
  const points = Array.from({ length: means.size }, (_, index) => meanEstimate(means, index, level));
  return {
    value: points.map((point) => point.value),
    low: points.map((point) => point.low),
    high: points.map((point) => point.high),
    level,
    replications: means.replications,
  };
}

/** The part of a symmetric interval in which the true value can lie. */
export function possible(estimate: Estimate, most = Number.POSITIVE_INFINITY): Estimate {
  return { ...estimate, low: Math.max(0, estimate.low), high: Math.min(most, estimate.high) };
}

function given(estimate: EstimateOrRefused): Estimate {
  if (estimate.kind === 'estimate') return estimate;
  throw new RangeError(`Results need at least ${FEWEST_REPLICATIONS} replications: ${estimate.reason}`);
}
