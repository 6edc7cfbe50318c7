import { createStream } from '@buildweek/core';
import { gammaQuantile, inverseNormal } from '@buildweek/numbers';
import type { LoggedJob, LoggedJobs, MachineRun } from '@buildweek/records';

type Stream = ReturnType<typeof createStream>;

const HOUR = 3_600_000;
const WEEK = 168 * HOUR;
/** Monday 2026-01-05, civil time. */
const FROM = Date.UTC(2026, 0, 5);

/** The laws that logs are drawn from: all that a log can tell, and what is right. */
export interface KnownLaws {
  readonly weeks: number;
  /** Coefficient of variation of a gamma factor that all jobs of a week share; 0: none. */
  readonly weekVariation: number;
  readonly parts: readonly { readonly name: string; readonly perWeek: number }[];
  /** Minutes of hand work on a job: lognormal. */
  readonly handWork: { readonly mean: number; readonly logStandardDeviation: number };
  /** Hours of a print: gamma. */
  readonly print: { readonly mean: number; readonly shape: number };
  readonly machines: number;
  readonly runsPerWeek: number;
  /** Chance that a build that was not stopped by a breakdown fails. */
  readonly failureShare: number;
  /** Running hours between breakdowns, on average. */
  readonly hoursBetweenBreakdowns: number;
}

/**
 * A year in which nothing is odd. Few enough breakdowns that a count is far from normal, and a rare part; the days are
 * those of a lab that is asked for work from Monday to Friday, 8 to 16, in the mornings twice as often.
 */
export const KNOWN_LAWS: KnownLaws = {
  weeks: 52,
  weekVariation: 0,
  parts: [
    { name: 'bracket', perWeek: 12 },
    { name: 'housing', perWeek: 3 },
  ],
  handWork: { mean: 30, logStandardDeviation: 0.5 },
  print: { mean: 6, shape: 4 },
  machines: 2,
  runsPerWeek: 8,
  failureShare: 0.06,
  hoursBetweenBreakdowns: 250,
};

/** A log as it is read, and the records of its machines. */
export interface KnownLog {
  readonly jobs: LoggedJobs;
  readonly runs: readonly MachineRun[];
}

/** Draws a log by plain draws, without the simulator. */
export function knownLog(laws: KnownLaws, seed: string): KnownLog {
  const stream = (purpose: string): Stream => createStream(seed, 0, purpose, '');
  const factors = weekFactors(laws, stream('weeks'));
  const jobs = laws.parts
    .flatMap(({ name, perWeek }) => jobsOf(laws, name, perWeek, factors, createStream(seed, 0, 'jobs', name)))
    .sort((a, b) => a.asked - b.asked)
    .map((job, index) => ({ ...job, row: index + 2 }));
  return {
    jobs: {
      from: FROM,
      until: FROM + laws.weeks * WEEK,
      jobs,
      counted: { read: jobs.length, kept: jobs.length, troubles: [] },
    },
    runs: runsOf(laws, stream('runs')),
  };
}

function weekFactors({ weeks, weekVariation }: KnownLaws, draw: Stream): number[] {
  const square = weekVariation ** 2;
  return Array.from({ length: weeks }, () => (square === 0 ? 1 : square * gammaQuantile(draw(), 1 / square)));
}

/** Twenty hours of the week count twice: Monday to Friday, 8 to 12; as many once: 12 to 16. */
function hourOfWeek(share: number): number {
  const weighted = share * 60;
  const day = Math.floor(weighted / 12);
  const rest = weighted - day * 12;
  return day * 24 + 8 + (rest < 8 ? rest / 2 : rest - 4);
}

function jobsOf(
  { weeks, handWork }: KnownLaws,
  part: string,
  perWeek: number,
  factors: readonly number[],
  draw: Stream,
): LoggedJob[] {
  const jobs: LoggedJob[] = [];
  const logMean = Math.log(handWork.mean) - handWork.logStandardDeviation ** 2 / 2;
  for (let week = 0; week < weeks; week++) {
    // Gaps in the time in which one job is expected a unit, so that the number of a week is Poisson.
    const mean = perWeek * (factors[week] ?? 1);
    for (let expected = gap(draw); expected < mean; expected += gap(draw)) {
      const asked = FROM + week * WEEK + Math.floor(hourOfWeek(expected / mean) * 60) * 60_000;
      const minutes = Math.exp(logMean + handWork.logStandardDeviation * inverseNormal(draw()));
      const start = asked + HOUR / 2;
      const end = start + minutes * 60_000;
      jobs.push({
        ...JOB,
        asked,
        part,
        quantity: 1 + Math.floor(6 * draw()),
        rush: draw() < 0.15,
        finished: end,
        stages: [{ name: 'remove supports', start, end, isWork: true }],
      });
    }
  }
  return jobs;
}

function gap(draw: Stream): number {
  return -Math.log(draw());
}

const JOB: LoggedJob = {
  row: 0,
  name: null,
  asked: 0,
  askedHasClock: true,
  part: '',
  quantity: null,
  process: 'resin',
  material: 'resin',
  rush: null,
  promised: null,
  finished: null,
  finishedHasClock: true,
  cancelled: false,
  isOpen: false,
  stages: [],
  stage: null,
  machine: null,
  requester: null,
};

/** Runs that follow each other on every machine at random distances; the last may still run when the log ends. */
function runsOf(laws: KnownLaws, draw: Stream): MachineRun[] {
  const { weeks, print, machines, runsPerWeek, failureShare, hoursBetweenBreakdowns } = laws;
  const until = FROM + weeks * WEEK;
  const idle = 168 / (runsPerWeek / machines) - print.mean;
  const runs: MachineRun[] = [];
  for (let number = 1; number <= machines; number++) {
    let start = FROM;
    for (;;) {
      start += gap(draw) * idle * HOUR;
      if (start >= until) break;
      const whole = (print.mean / print.shape) * gammaQuantile(draw(), print.shape);
      const untilBreakdown = gap(draw) * hoursBetweenBreakdowns;
      const fails = draw() < failureShare;
      const end = start + Math.min(whole, untilBreakdown) * HOUR;
      const isRunning = end >= until;
      const outcome = untilBreakdown < whole ? 'broke down' : fails ? 'failed' : 'done';
      runs.push({
        row: runs.length + 2,
        machine: `resin ${number}`,
        start,
        end: isRunning ? null : end,
        outcome: isRunning ? 'running' : outcome,
        material: null,
        job: null,
      });
      start = end;
    }
  }
  return runs;
}
