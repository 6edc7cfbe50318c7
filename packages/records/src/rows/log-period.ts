import type { CivilTime, LoggedJob } from '../logged-jobs.ts';

const DAY = 86_400_000;
/** How far beyond nearly all others a time may lie before it is a slip of the pen, such as 2062. */
const BEYOND = 92 * DAY;

export interface LogPeriod {
  readonly from: CivilTime;
  readonly until: CivilTime;
}

/**
 * From the day of the first request to the last time that the log tells; what lies a quarter of a year before or behind
 * all but half a per cent of the requests does not count.
 */
export function logPeriod(jobs: readonly LoggedJob[]): LogPeriod {
  const asked = Float64Array.from(jobs, (job) => job.asked).sort();
  const trim = Math.floor(asked.length * 0.005);
  const earliest = (asked[trim] ?? 0) - BEYOND;
  const latest = (asked[asked.length - 1 - trim] ?? 0) + BEYOND;
  let from = Number.POSITIVE_INFINITY;
  let until = Number.NEGATIVE_INFINITY;
  const extend = (time: number | null): void => {
    if (time !== null && time >= earliest && time <= latest) until = Math.max(until, time);
  };
  for (const job of jobs) {
    if (job.asked < earliest || job.asked > latest) continue;
    from = Math.min(from, job.asked);
    extend(job.askedHasClock ? job.asked : job.asked + DAY - 60_000);
    extend(job.finished);
    for (const { start, end } of job.stages) {
      extend(start);
      extend(end);
    }
  }
  // The last minute itself belongs to the period.
  return { from: Math.floor(from / DAY) * DAY, until: until + 60_000 };
}
