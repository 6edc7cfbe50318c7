import type { TraceEntry } from '@buildweek/core';
import { grouped } from './grouped.ts';
import type { PlayedRun } from './machine-runs.ts';
import type { PlayedYear } from './play-year.ts';

const SLOWED = 'remove supports';

/** A request as a careful clerk would write it down. Times are those on the wall clock, milliseconds since 1970. */
export interface PlayedRequest {
  readonly job: number;
  readonly received: number;
  readonly part: string;
  readonly pieces: number;
  readonly process: string;
  readonly material: string;
  readonly rush: boolean;
  readonly promised: number | null;
  readonly machine: string;
  readonly printStart: number | null;
  readonly printEnd: number | null;
  /** Beginning of the removal of supports, and that plus the time worked on it, breaks left out. */
  readonly supportStart: number | null;
  readonly supportEnd: number | null;
  readonly ready: number | null;
  readonly cancelled: boolean;
  /** Where it stands at the end of the log; empty when it does no more. */
  readonly step: string;
}

/** The requests that came in between two times, as they stand at the second. */
export function playedRequests(
  { lab, entries }: PlayedYear,
  runs: readonly PlayedRun[],
  from: number,
  until: number,
): PlayedRequest[] {
  const byJob = grouped(entries, ({ job, time }) => (job < 0 || time > until ? null : job));
  const runsOfJob = new Map<number, PlayedRun[]>();
  for (const run of runs)
    for (const job of run.jobs) runsOfJob.set(job, [...(runsOfJob.get(job) ?? []), run]);
  return [...byJob].flatMap(([job, own]) => {
    const arrival = own.find(({ what }) => what === 'job arrives');
    if (arrival === undefined || arrival.time < from) return [];
    const part = lab.parts.find(({ name }) => name === arrival.part);
    const prints = runsOfJob.get(job) ?? [];
    const cancelled = own.some(({ what }) => what === 'job is cancelled');
    const ready = own.find(({ what }) => what === 'job ends')?.time ?? null;
    const work = workedOn(own, SLOWED);
    return [
      {
        job,
        received: arrival.time,
        part: arrival.part ?? '',
        pieces: arrival.pieces,
        process: (part?.route ?? '').replace(' part', ''),
        material: part?.material ?? '',
        rush: arrival.rush,
        promised: arrival.dueAt,
        machine: prints.at(-1)?.machine ?? '',
        printStart: prints[0]?.start ?? null,
        printEnd: prints.at(-1)?.end ?? null,
        supportStart: work?.start ?? null,
        supportEnd: work?.end ?? null,
        ready,
        cancelled,
        step: ready !== null || cancelled ? '' : standsAt(own, part?.stages.map(({ name }) => name) ?? []),
      },
    ];
  });
}

/** When work on a stage began, and that plus the time worked on it the first time; null when it is not done. */
function workedOn(entries: readonly TraceEntry[], stage: string): { start: number; end: number } | null {
  let start: number | null = null;
  let since = 0;
  let worked = 0;
  for (const { time, what, stage: own } of entries) {
    if (own !== stage) continue;
    if (what === 'step starts' || what === 'step resumes') {
      start ??= time;
      since = time;
    } else if (what === 'step pauses') worked += time - since;
    else if (what === 'step ends' && start !== null) return { start, end: start + worked + time - since };
  }
  return null;
}

/** The stage that a job is in or waits for: the one behind the last that it has been seen at the end of. */
function standsAt(entries: readonly TraceEntry[], stages: readonly string[]): string {
  let at = 0;
  for (const { what, stage, phase } of entries) {
    const index = stage === null ? -1 : stages.indexOf(stage);
    if (what === 'parts are rejected' || what === 'job is revised') at = Math.max(0, stages.indexOf('build'));
    else if (index < 0) continue;
    else if (what === 'step starts' || what === 'step resumes') at = index;
    else if (what === 'step ends' && (phase === 'work' || phase === 'wait' || phase === 'unload'))
      at = index + 1;
  }
  return stages[Math.min(at, stages.length - 1)] ?? '';
}
