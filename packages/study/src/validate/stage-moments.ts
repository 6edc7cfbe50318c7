import type { LocalTime, TraceEntry } from '@buildweek/core';
import type { CivilTime, LoggedJob } from '@buildweek/records';
import type { KnownStage } from './logged-stages.ts';

/** When a job began and ended a stage; null where that is not known, or has not happened. */
export interface StageMoments {
  readonly start: CivilTime | null;
  /** Of work without its breaks: start plus the time worked on it, the first time. */
  readonly end: CivilTime | null;
}

/** What the log says of one job and the stages. */
export function loggedMoments(job: LoggedJob, stages: readonly KnownStage[]): StageMoments[] {
  return stages.map(({ logged }) => {
    const own = job.stages.find(({ name }) => name === logged);
    return { start: own?.start ?? null, end: own?.end ?? null };
  });
}

/**
 * The same of each job of a replication, from its trace.
 *
 * @param jobs number of followed jobs; jobs behind them are left out
 * @param stagesOf the stages of the part of a job
 * @param civil from elapsed milliseconds to civil time
 */
export function tracedMoments(
  trace: readonly TraceEntry[],
  jobs: number,
  stagesOf: (job: number) => readonly KnownStage[],
  civil: (elapsed: number) => CivilTime,
): readonly (readonly StageMoments[])[] {
  const found = Array.from({ length: jobs }, (_, job) =>
    stagesOf(job).map((stage) => new TracedStage(stage)),
  );
  for (const { job, stage, what, phase, time } of trace) {
    for (const one of found[job] ?? []) {
      if (one.known.stage === stage) one.note(what, phase, time);
    }
  }
  return found.map((stages) => stages.map((stage) => stage.moments(civil)));
}

/** From elapsed milliseconds since the Monday from which is played. */
export function civilReader(localTime: LocalTime, playedFrom: CivilTime): (elapsed: number) => CivilTime {
  return (elapsed) => localTime.toLocal(elapsed) + playedFrom;
}

/** Gathers the moments of one stage of one job. */
class TracedStage {
  readonly known: KnownStage;
  private start: number | null = null;
  private end: number | null = null;
  private since = 0;
  private worked = 0;
  private isDone = false;

  constructor(known: KnownStage) {
    this.known = known;
  }

  note(what: TraceEntry['what'], phase: string | null, time: number): void {
    // Whoever writes down a print means the machine's own time, not set-up and unloading.
    if (this.known.isBuild && phase !== 'print') return;
    if (what === 'step starts' || what === 'step resumes') {
      this.start ??= time;
      this.since = time;
    } else if (what === 'step pauses' && !this.isDone) {
      this.worked += time - this.since;
    } else if (what === 'step ends' && this.start !== null) {
      if (!this.isDone) this.worked += time - this.since;
      this.isDone = true;
      this.end = time;
    }
  }

  moments(civil: (elapsed: number) => CivilTime): StageMoments {
    const start = this.start === null ? null : civil(this.start);
    if (start === null || this.end === null) return { start, end: null };
    return { start, end: this.known.isWork ? start + this.worked : civil(this.end) };
  }
}
