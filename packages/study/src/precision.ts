import type { PrecisionAsked, PrecisionMeasure } from '@buildweek/model';
import type { EstimateOrRefused, JobClass } from '@buildweek/results';
import { sequentialPrecision } from '@buildweek/statistics';

/** Whether what was asked for is reached. */
export interface PrecisionReached {
  readonly reached: boolean;
  /** Half width as a share of the value; null when there is no estimate yet. */
  readonly relativeHalfWidth: number | null;
}

const SHARES: Readonly<Partial<Record<PrecisionMeasure, number>>> = {
  'p50 lead time': 0.5,
  'p80 lead time': 0.8,
  'p90 lead time': 0.9,
  'p95 lead time': 0.95,
};

/** Compares the interval of the named measure of all jobs with what was asked for. */
export function precisionOf(all: JobClass, asked: PrecisionAsked): PrecisionReached {
  const estimate = measureOf(all, asked.measure);
  if (estimate?.kind !== 'estimate') return { reached: false, relativeHalfWidth: null };
  return sequentialPrecision(estimate, estimate.replications, asked.relativeHalfWidth);
}

function measureOf(all: JobClass, measure: PrecisionMeasure): EstimateOrRefused | undefined {
  if (measure === 'mean lead time') return all.meanLeadTime;
  if (measure === 'share on time') return all.onTime;
  return all.percentiles.find((percentile) => percentile.share === SHARES[measure])?.longRun;
}
