import type { ReplicationMeasure } from '../plans/replication-measure.ts';

/** Weeks counted from 0, the last not included. */
export interface WeekSpan {
  readonly from: number;
  readonly to: number;
}

/**
 * Jobs in the lab in each measured week; then, for each, the share on time of the jobs that come in it; then the same
 * for spans of weeks.
 */
export function weekMeasures(weeks: number, spans: readonly WeekSpan[]): ReplicationMeasure[] {
  const single = Array.from({ length: weeks }, (_, week): WeekSpan => ({ from: week, to: week + 1 }));
  return [
    ...single.map(
      ({ from }): ReplicationMeasure => ({
        name: `jobs in the lab in week ${from + 1}`,
        unit: 'jobs',
        better: 'lower',
        of: ({ weeks: found }) => [found.jobsInLab[from] ?? 0, 1],
      }),
    ),
    ...[...single, ...spans].map(
      ({ from, to }): ReplicationMeasure => ({
        name: `on time, of the jobs that come in weeks ${from + 1} to ${to}`,
        unit: 'share',
        better: 'higher',
        of: ({ weeks: found }) => [
          total(found.onTimeJobs.subarray(from, to)),
          total(found.promisedJobs.subarray(from, to)),
        ],
      }),
    ),
  ];
}

function total(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0);
}
