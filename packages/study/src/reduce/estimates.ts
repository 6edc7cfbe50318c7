import type { Band, Estimate, EstimateOrRefused } from '@buildweek/results';
import {
  estimateOver,
  FEWEST_REPLICATIONS,
  type RunningMeans,
  type RunningRatios,
} from '@buildweek/statistics';

/**
 * Estimate of one mean, with no refusal: the study has made sure that there are enough replications.
 * @throws RangeError for fewer than 20 replications
 */
export function meanEstimate(means: RunningMeans, index: number, level: number): Estimate {
  return given(estimateOver(means.replications, () => means.interval(index, level)));
}

/** Estimate of a ratio whose denominator is known to be there; errors as above. */
export function ratioEstimate(ratios: RunningRatios, index: number, level: number): Estimate {
  return given(estimateOver(ratios.replications, () => ratios.interval(index, level)));
}

/** Estimate of a ratio, or why there is none. */
export function ratioOrRefused(
  ratios: RunningRatios,
  index: number,
  level: number,
  withoutDenominator: string,
): EstimateOrRefused {
  if (!ratios.hasDenominator) return { kind: 'refused', reason: withoutDenominator };
  return estimateOver(ratios.replications, () => ratios.interval(index, level));
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

function given(estimate: EstimateOrRefused): Estimate {
  if (estimate.kind === 'estimate') return estimate;
  throw new RangeError(`Results need at least ${FEWEST_REPLICATIONS} replications: ${estimate.reason}`);
}
