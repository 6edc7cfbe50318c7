import { sum } from '@buildweek/numbers';
import type { EstimateOrRefused, JobClass, PredictionOrRefused } from '@buildweek/results';
import {
  estimateOver,
  moments,
  onePeriodInterval,
  pooledDeviationInterval,
  ratioInterval,
} from '@buildweek/statistics';
import { possible } from './estimates.ts';
import type { JobSample } from './job-sums.ts';
import { percentilesOf } from './percentiles.ts';

/** Lead times and promises of one class of jobs, from one sample for each replication. */
export function jobClassOf(
  part: string | null,
  priority: JobClass['priority'],
  samples: readonly JobSample[],
  level: number,
): JobClass {
  const leadTimes = samples.map((sample) => sample.leadTimes);
  return {
    part,
    priority,
    jobs: sum(samples.map((sample) => sample.arrived)),
    unfinished: sum(samples.map((sample) => sample.unfinished)),
    meanLeadTime: meanLeadTime(samples, level),
    standardDeviationOfLeadTime: deviationOfLeadTime(samples, level),
    percentiles: percentilesOf(
      leadTimes,
      samples.map((sample) => sample.unfinished),
      level,
    ),
    onTime: onTime(samples, level),
    onTimeOnePeriod: onTimeOnePeriod(samples, level),
  };
}

function meanLeadTime(samples: readonly JobSample[], level: number): EstimateOrRefused {
  const without = withoutLeadTime(samples);
  if (without !== null) return { kind: 'refused', reason: without };
  const estimate = estimateOver(samples.length, () =>
    ratioInterval(
      samples.map((sample) => sum(sample.leadTimes)),
      samples.map((sample) => sample.leadTimes.length),
      level,
    ),
  );
  return estimate.kind === 'refused' ? estimate : possible(estimate);
}

function deviationOfLeadTime(samples: readonly JobSample[], level: number): EstimateOrRefused {
  const without = withoutLeadTime(samples);
  if (without !== null) return { kind: 'refused', reason: without };
  const spread = samples.map((sample) => moments(sample.leadTimes));
  // Leaving out any one replication must leave two jobs, and some spread unless there is none at all.
  const jobs = spread.reduce((total, one) => total + one.count, 0);
  if (spread.some((one) => jobs - one.count < 2)) {
    return { kind: 'refused', reason: 'There are too few such jobs for a standard deviation.' };
  }
  return estimateOver(samples.length, () => pooledDeviationInterval(spread, level));
}

/** A mean over the finished jobs alone would be too short: the unfinished ones are the long ones. */
function withoutLeadTime(samples: readonly JobSample[]): string | null {
  const unfinished = sum(samples.map((sample) => sample.unfinished));
  const jobs = sum(samples.map((sample) => sample.arrived));
  if (jobs === 0) return 'No such job arrived.';
  if (unfinished === 0) return null;
  return `${unfinished} of ${jobs} jobs were not finished when the replications ended; without them the figure would be too low.`;
}

function onTime(samples: readonly JobSample[], level: number): EstimateOrRefused {
  if (samples.every((sample) => sample.promised === 0))
    return { kind: 'refused', reason: 'Nothing is promised for these jobs.' };
  const estimate = estimateOver(samples.length, () =>
    ratioInterval(
      samples.map((sample) => sample.onTime),
      samples.map((sample) => sample.promised),
      level,
    ),
  );
  return estimate.kind === 'refused' ? estimate : possible(estimate, 1);
}

function onTimeOnePeriod(samples: readonly JobSample[], level: number): PredictionOrRefused {
  const shares = samples.flatMap(({ onTime, promised }) => (promised === 0 ? [] : [onTime / promised]));
  if (shares.length === 0) return { kind: 'refused', reason: 'Nothing is promised for these jobs.' };
  return onePeriodInterval(shares, level);
}
