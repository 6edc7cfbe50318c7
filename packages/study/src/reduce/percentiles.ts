import type { Percentile, PredictionOrRefused } from '@buildweek/results';
import { onePeriodInterval, pooledQuantile, pooledQuantileInterval } from '@buildweek/statistics';

/** The shares for which percentiles are given. */
const PERCENTILE_SHARES = [0.5, 0.8, 0.9, 0.95] as const;

/**
 * Percentiles over all jobs, each with what one period may bring.
 * @param samples for each replication the hours of what was finished, ascending
 * @param unfinished for each replication how many were not; they count as later than everything
 */
export function percentilesOf(
  samples: readonly Float64Array[],
  unfinished: readonly number[],
  level: number,
): Percentile[] {
  return PERCENTILE_SHARES.map((share) => ({
    share,
    longRun: pooledQuantileInterval(samples, unfinished, share, level),
    onePeriod: onePeriodOf(samples, unfinished, share, level),
  }));
}

/** What the percentile of one period's own jobs may come to. Periods without any job say nothing about it. */
function onePeriodOf(
  samples: readonly Float64Array[],
  unfinished: readonly number[],
  share: number,
  level: number,
): PredictionOrRefused {
  const own: number[] = [];
  let jobs = 0;
  samples.forEach((sample, replication) => {
    const others = unfinished[replication] ?? 0;
    jobs += sample.length + others;
    if (sample.length + others > 0) own.push(pooledQuantile([sample], [others], share));
  });
  const perPeriod = jobs / samples.length;
  // Below one job beyond it the point is the slowest job of the period, whatever its name.
  if (perPeriod * (1 - share) < 1 - 1e-9) {
    return {
      kind: 'refused',
      reason: `One period has ${Number(perPeriod.toPrecision(2))} such jobs on average, too few for a ${Number((100 * share).toPrecision(6))} % point of its own.`,
    };
  }
  return onePeriodInterval(own, level);
}
