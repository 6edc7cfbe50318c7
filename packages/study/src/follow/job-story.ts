import { MILLISECONDS_PER_WEEK, type TraceEntry } from '@buildweek/core';
import { WAIT_CAUSES, type WaitCause } from '@buildweek/results';
import { type Activity, activitiesOf } from './activities.ts';
import type { Replay } from './replay.ts';

/** A wait, or a part of it, under one cause. */
export interface CausedWait {
  readonly cause: WaitCause;
  readonly milliseconds: number;
}

/** One stretch of a job's way through the lab. */
export interface JobStretch {
  /** `lost`: work that went on when the job was cancelled or revised; the time counts as waiting for the requester. */
  readonly kind: 'event' | 'wait' | 'work' | 'lost';
  /** Milliseconds since the stated start of the plan. */
  readonly from: number;
  readonly to: number;
  /** Step that was worked on or waited for; empty for an event of the whole job. */
  readonly stage: string;
  readonly phase: string;
  readonly unit: string | null;
  readonly persons: readonly string[];
  /** For a wait: the time under each cause, largest first; they may have alternated. */
  readonly causes: readonly CausedWait[];
  readonly pieces: number;
  /** For an event: what happened; for work: how it ended when it did not come to its end; else empty. */
  readonly what: string;
}

/** Where a job was, what it waited for and how long. Times are milliseconds since the stated start of the plan. */
export interface JobStory {
  /** From 0, in the order of arrival. */
  readonly job: number;
  readonly part: string;
  readonly rush: boolean;
  readonly pieces: number;
  readonly arrivedAt: number;
  /** Null without a promise. */
  readonly dueAt: number | null;
  readonly outcome: 'finished' | 'cancelled' | 'unfinished';
  /** When it was finished, cancelled, or the replication ended without either. */
  readonly until: number;
  readonly stretches: readonly JobStretch[];
  readonly hours: JobHours;
}

/**
 * Where the lead time of a finished job went, milliseconds. Pieces that go separate ways count by their share of the
 * job, so that all of it together is the time from arrival to the last good part.
 */
interface JobHours {
  /** What passed before the plan began, for a job that is there at its start. */
  readonly beforePlan: number;
  readonly work: number;
  /** Only causes that occurred, largest first. */
  readonly waits: readonly CausedWait[];
}

/**
 * The story of one job of a replayed replication.
 *
 * @param job its number, from 0
 * @returns null when no job has this number
 */
export function jobStoryOf(replay: Replay, job: number): JobStory | null {
  return storyOf(
    replay.entries.filter((entry) => entry.job === job),
    replay.endedAt,
  );
}

/** Jobs that arrive in the measured weeks, in the order of their lead times, longest (and unfinished) first. */
export function slowestJobs(replay: Replay, count: number): JobStory[] {
  const measuredEnd = replay.weeks * MILLISECONDS_PER_WEEK;
  const arrivals = new Map<number, number>();
  const ends = new Map<number, number>();
  const cancelled = new Set<number>();
  for (const { what, job, time, duration } of replay.entries) {
    if (what === 'job ends') ends.set(job, time);
    else if (what === 'job arrives') arrivals.set(job, time - duration);
    else if (what === 'job is cancelled') cancelled.add(job);
  }
  const leadTime = (job: number): number =>
    (ends.get(job) ?? Number.POSITIVE_INFINITY) - (arrivals.get(job) ?? 0);
  const chosen = [...arrivals.keys()]
    .filter((job) => {
      const arrivedAt = arrivals.get(job) ?? 0;
      return arrivedAt >= 0 && arrivedAt < measuredEnd && !cancelled.has(job);
    })
    .sort((a, b) => compare(leadTime(b), leadTime(a)) || a - b)
    .slice(0, count);
  const entries = new Map(chosen.map((job) => [job, [] as TraceEntry[]]));
  for (const entry of replay.entries) entries.get(entry.job)?.push(entry);
  return [...entries.values()].flatMap((own) => storyOf(own, replay.endedAt) ?? []);
}

/** Two unfinished jobs are equal, though their lead times have no difference. */
function compare(a: number, b: number): number {
  return a === b ? 0 : a - b;
}

/** @param entries those of one job, in order of time */
function storyOf(entries: readonly TraceEntry[], replicationEnd: number): JobStory | null {
  const arrival = entries.find((entry) => entry.what === 'job arrives');
  if (arrival === undefined) return null;
  const end = entries.find(({ what }) => what === 'job ends' || what === 'job is cancelled');
  const ends = { 'job ends': 'finished', 'job is cancelled': 'cancelled' } as const;
  const until = end?.time ?? replicationEnd;
  const waits = waitsOf(entries);
  const work = activitiesOf(entries).map((activity) => workStretch(activity, until));
  const known = [...waits, ...work.filter((stretch) => !waits.some((wait) => isAnswer(wait, stretch)))];
  const stretches = [...known, ...eventsOf(entries, known)];
  return {
    job: arrival.job,
    part: arrival.part ?? '',
    rush: arrival.rush,
    pieces: arrival.pieces,
    arrivedAt: arrival.time - arrival.duration,
    dueAt: arrival.dueAt,
    outcome: end === undefined ? 'unfinished' : ends[end.what as keyof typeof ends],
    until,
    stretches: stretches.sort((a, b) => a.from - b.from || a.to - b.to || rankOf(a) - rankOf(b)),
    hours: hoursOf(stretches, arrival),
  };
}

function workStretch({ entry, from, to, end }: Activity, until: number): JobStretch {
  return {
    ...placeOf(entry),
    kind: end === 'was for nothing' ? 'lost' : 'work',
    from,
    to: to ?? until,
    causes: [],
    what: end === 'ends' ? '' : end,
  };
}

/** A stage that is nothing but waiting for the requester's answer is told of both as a step and as a wait. */
function isAnswer(wait: JobStretch, step: JobStretch): boolean {
  return (
    step.phase === 'wait' &&
    wait.causes[0]?.cause === 'requester' &&
    wait.stage === step.stage &&
    wait.phase === step.phase &&
    wait.from === step.from &&
    wait.to === step.to
  );
}

/** Waits that end at the same moment before the same step are one wait with several causes. */
function waitsOf(entries: readonly TraceEntry[]): JobStretch[] {
  const waits: JobStretch[] = [];
  for (const entry of entries) {
    if (entry.what !== 'has waited' || entry.cause === null) continue;
    const part = { cause: entry.cause, milliseconds: entry.duration };
    const last = waits.at(-1);
    // One lot is told after the other, each with its causes in their order.
    const isSame =
      last !== undefined &&
      last.to === entry.time &&
      last.stage === entry.stage &&
      last.phase === entry.phase &&
      last.pieces === entry.pieces &&
      last.causes.every(({ cause }) => WAIT_CAUSES.indexOf(cause) < WAIT_CAUSES.indexOf(part.cause));
    if (isSame) {
      waits[waits.length - 1] = {
        ...last,
        from: last.from - entry.duration,
        causes: [...last.causes, part],
      };
    } else {
      waits.push(waitStretch(entry, part));
    }
  }
  return waits.map((wait) => ({ ...wait, causes: largestFirst(wait.causes) }));
}

function waitStretch(entry: TraceEntry, wait: CausedWait): JobStretch {
  return {
    ...placeOf(entry),
    kind: 'wait',
    from: entry.time - wait.milliseconds,
    to: entry.time,
    causes: [wait],
    what: '',
  };
}

/**
 * What happens to the job as a whole. A changed file makes lost time of whatever is not booked by then: what was going
 * on, and what had been waited for it.
 */
function eventsOf(entries: readonly TraceEntry[], known: readonly JobStretch[]): JobStretch[] {
  const begin = entries[0]?.time ?? 0;
  const events: JobStretch[] = [];
  let lostSoFar = 0;
  for (const entry of entries) {
    const { what, time, pieces } = entry;
    if (!EVENTS.has(what)) continue;
    const event = { ...placeOf(entry), kind: 'event' as const, from: time, to: time, causes: [], what };
    events.push(event);
    if (what !== 'job is revised') continue;
    const booked = known
      .filter(({ kind, to }) => (kind === 'work' || kind === 'wait') && to <= time)
      .reduce((sum, stretch) => sum + stretch.pieces * lengthOf(stretch), 0);
    const lost = time - begin - booked / pieces - lostSoFar;
    // Shares of pieces are no whole milliseconds.
    if (lost < 0.5) continue;
    lostSoFar += lost;
    events.push({
      ...waitStretch(entry, { cause: 'requester', milliseconds: lost }),
      what: 'lost to a changed file',
    });
  }
  return events;
}

const EVENTS: ReadonlySet<TraceEntry['what']> = new Set<TraceEntry['what']>([
  'job arrives',
  'job ends',
  'job is cancelled',
  'job is revised',
  'parts are rejected',
]);

function hoursOf(stretches: readonly JobStretch[], arrival: TraceEntry): JobHours {
  let work = 0;
  const waits = new Map<WaitCause, number>();
  for (const stretch of stretches) {
    const share = stretch.pieces / arrival.pieces;
    if (stretch.kind === 'work') work += share * lengthOf(stretch);
    for (const { cause, milliseconds } of stretch.causes) {
      waits.set(cause, (waits.get(cause) ?? 0) + share * milliseconds);
    }
  }
  const caused = [...waits].map(([cause, milliseconds]) => ({ cause, milliseconds }));
  return { beforePlan: arrival.duration, work, waits: largestFirst(caused) };
}

function lengthOf({ from, to }: JobStretch): number {
  return to - from;
}

function largestFirst(waits: readonly CausedWait[]): CausedWait[] {
  return [...waits].sort((a, b) => b.milliseconds - a.milliseconds);
}

function placeOf({ stage, phase, unit, persons, pieces }: TraceEntry) {
  return { stage: stage ?? '', phase: phase ?? '', unit, persons, pieces };
}

/** At one moment: what happened comes first, then waits, then work; the end of the job comes last. */
function rankOf({ kind, what }: JobStretch): number {
  if (kind === 'event') return what === 'job ends' || what === 'job is cancelled' ? 3 : 0;
  return kind === 'wait' ? 1 : 2;
}
