import type { TraceEntry } from '@buildweek/core';
import type { WaitCause } from '@buildweek/results';
import type { Replay } from './replay.ts';

/** One stretch of a job's way through the lab. */
export interface JobStretch {
  readonly kind: 'work' | 'wait' | 'event';
  /** Milliseconds since the stated start of the plan. */
  readonly from: number;
  readonly to: number;
  readonly stage: string;
  readonly phase: string;
  readonly unit: string | null;
  readonly persons: readonly string[];
  /** For a wait: the time under each cause, largest first. */
  readonly causes: readonly { readonly cause: WaitCause; readonly milliseconds: number }[];
  readonly pieces: number;
  /** For an event: what happened. */
  readonly what: string;
}

/** Where a job was, what it waited for and how long. */
export interface JobStory {
  readonly job: number;
  readonly part: string;
  readonly pieces: number;
  readonly arrivedAt: number;
  /** Null when it was not finished, or was cancelled. */
  readonly endedAt: number | null;
  readonly isCancelled: boolean;
  readonly stretches: readonly JobStretch[];
}

/**
 * The story of one job of a replayed replication.
 *
 * @returns null when no job has this number
 */
export function jobStoryOf(replay: Replay, job: number): JobStory | null {
  const entries = replay.entries.filter((entry) => entry.job === job);
  const arrival = entries.find((entry) => entry.what === 'job arrives');
  if (arrival === undefined) return null;
  const end = entries.find((entry) => entry.what === 'job ends');
  return {
    job,
    part: arrival.part ?? '',
    pieces: arrival.pieces,
    arrivedAt: arrival.time,
    endedAt: end?.time ?? null,
    isCancelled: entries.some((entry) => entry.what === 'job is cancelled'),
    stretches: stretchesOf(entries),
  };
}

/** Jobs that arrive in the measured weeks, in the order of their lead times, longest (and unfinished) first. */
export function slowestJobs(replay: Replay, count: number): JobStory[] {
  const measuredEnd = replay.weeks * 168 * 3_600_000;
  const jobs = replay.entries
    .filter((entry) => entry.what === 'job arrives' && entry.time >= 0 && entry.time < measuredEnd)
    .map((entry) => entry.job);
  const ends = new Map<number, number>();
  const arrivals = new Map<number, number>();
  const cancelled = new Set<number>();
  for (const entry of replay.entries) {
    if (entry.what === 'job ends') ends.set(entry.job, entry.time);
    else if (entry.what === 'job arrives') arrivals.set(entry.job, entry.time);
    else if (entry.what === 'job is cancelled') cancelled.add(entry.job);
  }
  const leadTime = (job: number): number =>
    (ends.get(job) ?? Number.POSITIVE_INFINITY) - (arrivals.get(job) ?? 0);
  return jobs
    .filter((job) => !cancelled.has(job))
    .sort((a, b) => leadTime(b) - leadTime(a) || a - b)
    .slice(0, count)
    .flatMap((job) => jobStoryOf(replay, job) ?? []);
}

function stretchesOf(entries: readonly TraceEntry[]): JobStretch[] {
  const stretches: JobStretch[] = [];
  /** What goes on, by stage, phase, pieces and place: a job that is split may be in several places. */
  const open = new Map<string, TraceEntry>();
  for (const entry of entries) {
    const key = JSON.stringify([entry.stage, entry.phase, entry.unit, entry.pieces]);
    switch (entry.what) {
      case 'step starts':
      case 'step resumes':
        open.set(key, entry);
        break;
      case 'step ends':
      case 'step pauses':
      case 'step is broken off': {
        const begun = open.get(key);
        open.delete(key);
        if (begun !== undefined) stretches.push(workStretch(begun, entry));
        break;
      }
      case 'has waited':
        addWait(stretches, entry);
        break;
      default:
        stretches.push(eventStretch(entry));
    }
  }
  return stretches.sort((a, b) => a.from - b.from || a.to - b.to || kindRank(a) - kindRank(b));
}

function workStretch(begun: TraceEntry, ended: TraceEntry): JobStretch {
  return {
    ...placeOf(begun),
    kind: 'work',
    from: begun.time,
    to: ended.time,
    causes: [],
    what: ended.what === 'step ends' ? '' : ended.what,
  };
}

function eventStretch(entry: TraceEntry): JobStretch {
  return { ...placeOf(entry), kind: 'event', from: entry.time, to: entry.time, causes: [], what: entry.what };
}

/** Waits that end at the same moment before the same step are one wait with several causes. */
function addWait(stretches: JobStretch[], entry: TraceEntry): void {
  if (entry.cause === null) return;
  const part = { cause: entry.cause, milliseconds: entry.duration };
  const last = stretches.at(-1);
  const isSame =
    last?.kind === 'wait' &&
    last.to === entry.time &&
    last.stage === entry.stage &&
    last.phase === entry.phase &&
    last.pieces === entry.pieces;
  if (last !== undefined && isSame) {
    stretches[stretches.length - 1] = {
      ...last,
      from: last.from - entry.duration,
      causes: [...last.causes, part].sort((a, b) => b.milliseconds - a.milliseconds),
    };
    return;
  }
  stretches.push({
    ...placeOf(entry),
    kind: 'wait',
    from: entry.time - entry.duration,
    to: entry.time,
    causes: [part],
    what: '',
  });
}

function placeOf(entry: TraceEntry) {
  return {
    stage: entry.stage ?? '',
    phase: entry.phase ?? '',
    unit: entry.unit,
    persons: entry.persons,
    pieces: entry.pieces,
  };
}

/** At one moment: what happened comes first, then waits, then work. */
function kindRank(stretch: JobStretch): number {
  return ['event', 'wait', 'work'].indexOf(stretch.kind);
}
