import type { EstimateOrRefused } from '@buildweek/results';
import { estimateOver, quantile, quantileRanks } from '@buildweek/statistics';

/**
 * Median of values of which some may be infinite, with its distribution-free interval.
 * @param values one for each replication; infinite (above or below) where money never comes back
 * @param limit for the reason why there is none, as `within 5 years`
 * @returns never where the interval reaches to what is infinite
 */
export function medianOverPeriods(
  values: readonly number[],
  level: number,
  limit: string,
): EstimateOrRefused {
  const sorted = Float64Array.from(values).sort();
  const replications = sorted.length;
  const never = sorted.filter((value) => !Number.isFinite(value)).length;
  return neverIfInfinite(
    estimateOver(replications, () => {
      const { lower, upper } = quantileRanks(replications, 0.5, level);
      const low = sorted[lower - 1] ?? Number.NEGATIVE_INFINITY;
      const high = sorted[upper - 1] ?? Number.POSITIVE_INFINITY;
      return { value: quantile(sorted, 0.5, 2), low, high, level };
    }),
    `In ${never} of ${replications} replications it does not pay back ${limit}.`,
  );
}

function neverIfInfinite(estimate: EstimateOrRefused, reason: string): EstimateOrRefused {
  if (estimate.kind !== 'estimate') return estimate;
  return Number.isFinite(estimate.low) && Number.isFinite(estimate.high)
    ? estimate
    : { kind: 'never', reason };
}
