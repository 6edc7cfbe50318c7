import type { CivilTime } from '@buildweek/records';
import { quantile } from '@buildweek/statistics';
import type { JudgedWeeks } from './judged-weeks.ts';
import { MILLISECONDS_PER_DAY, MILLISECONDS_PER_HOUR, MILLISECONDS_PER_WEEK } from './log-times.ts';
import type { PlayedJob } from './played-jobs.ts';

/** Shares of the jobs whose lead times are compared. */
export const LEAD_TIME_SHARES: readonly number[] = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95];
/** A 90 % point of fewer jobs is the slowest of them. */
const FEWEST_FOR_P90 = 10;

/** What the weeks and jobs of one group of parts were like, in the log or in one replication. */
export interface GroupObservation {
  /** By judged week: jobs finished, time average of jobs in the lab. */
  readonly finished: Float64Array;
  readonly inLab: Float64Array;
  /** By judged week: average lead time of the jobs that came, hours; NaN where none came. */
  readonly leadByWeek: Float64Array;
  /** Jobs that came in the judged weeks. */
  readonly jobs: number;
  readonly meanLead: number;
  /** Null with fewer than ten jobs. */
  readonly p90: number | null;
  readonly leadTimes: readonly number[];
  /** Share of the jobs whose promise ends in the judged weeks; null: there is none. */
  readonly onTime: number | null;
  readonly promised: number;
}

/** All parts together, and each part. */
export interface Observation {
  readonly all: GroupObservation;
  /** In the order of the names given. */
  readonly parts: readonly GroupObservation[];
}

/**
 * What can be told of the judged weeks from when jobs were asked for and finished. The log and each replication go
 * through the same function. A job that is not finished by the end of the judged weeks counts with the time up to
 * there, in both.
 *
 * @param ends when each job was finished, civil time; Infinity: not in the weeks that are known
 * @param parts names of part types
 */
export function observe(
  jobs: readonly PlayedJob[],
  ends: ArrayLike<CivilTime>,
  weeks: JudgedWeeks,
  parts: readonly string[],
): Observation {
  const all = new Gathered(weeks);
  const byPart = new Map(parts.map((part) => [part, new Gathered(weeks)]));
  jobs.forEach((job, position) => {
    if (!job.isJudged) return;
    const end = ends[position] ?? Number.POSITIVE_INFINITY;
    all.add(job, end);
    byPart.get(job.part)?.add(job, end);
  });
  return { all: all.observation(), parts: [...byPart.values()].map((one) => one.observation()) };
}

/** A day that stands for an hour that is not known ends so long before the next, as in `LoggedJob.finished`. */
const LAST_MINUTE = 60_000;

/** A finish of which the log would only tell the day is the end of that day. */
export function asLogged(end: CivilTime, hasClock: boolean): CivilTime {
  if (hasClock || !Number.isFinite(end)) return end;
  return Math.floor(end / MILLISECONDS_PER_DAY) * MILLISECONDS_PER_DAY + MILLISECONDS_PER_DAY - LAST_MINUTE;
}

class Gathered {
  private readonly weeks: JudgedWeeks;
  private readonly finished: Float64Array;
  private readonly inLab: Float64Array;
  private readonly leadSums: Float64Array;
  private readonly asked: Float64Array;
  private readonly leads: number[] = [];
  private promised = 0;
  private onTime = 0;

  constructor(weeks: JudgedWeeks) {
    this.weeks = weeks;
    this.finished = new Float64Array(weeks.weeks);
    this.inLab = new Float64Array(weeks.weeks);
    this.leadSums = new Float64Array(weeks.weeks);
    this.asked = new Float64Array(weeks.weeks);
  }

  add({ logged }: PlayedJob, end: CivilTime): void {
    const { from, to } = this.weeks;
    if (end >= from && end < to) increase(this.finished, this.weekOf(end), 1);
    this.addStay(Math.max(from, logged.asked), Math.min(to, end));
    if (logged.asked < from) return;
    const lead = (Math.min(to, end) - logged.asked) / MILLISECONDS_PER_HOUR;
    this.leads.push(lead);
    increase(this.leadSums, this.weekOf(logged.asked), lead);
    increase(this.asked, this.weekOf(logged.asked), 1);
    // Of a promise beyond the last judged week it is not known in all replications whether it was kept.
    if (logged.promised === null || logged.promised >= to) return;
    this.promised++;
    if (end <= logged.promised) this.onTime++;
  }

  observation(): GroupObservation {
    const leads = Float64Array.from(this.leads).sort();
    const share = (p: number): number => (leads.length === 0 ? Number.NaN : quantile(leads, p, 7));
    return {
      finished: this.finished,
      inLab: this.inLab,
      leadByWeek: this.leadSums.map((sum, week) => sum / (this.asked[week] ?? 0)),
      jobs: leads.length,
      meanLead: this.leads.reduce((sum, lead) => sum + lead, 0) / leads.length,
      p90: leads.length < FEWEST_FOR_P90 ? null : share(0.9),
      leadTimes: LEAD_TIME_SHARES.map(share),
      onTime: this.promised === 0 ? null : this.onTime / this.promised,
      promised: this.promised,
    };
  }

  /** Spreads a stay in the lab over the weeks that it touches. */
  private addStay(start: CivilTime, end: CivilTime): void {
    for (let at = start; at < end; ) {
      const week = this.weekOf(at);
      const next = Math.min(end, this.weeks.from + (week + 1) * MILLISECONDS_PER_WEEK);
      increase(this.inLab, week, (next - at) / MILLISECONDS_PER_WEEK);
      at = next;
    }
  }

  private weekOf(time: CivilTime): number {
    return Math.floor((time - this.weeks.from) / MILLISECONDS_PER_WEEK);
  }
}

function increase(sums: Float64Array, position: number, by: number): void {
  sums[position] = (sums[position] ?? 0) + by;
}
