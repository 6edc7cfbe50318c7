import { MILLISECONDS_PER_WEEK, type TraceEntry } from '@buildweek/core';
import { type Activity, type ActivityEnd, activitiesOf } from './activities.ts';
import type { Replay } from './replay.ts';

/** What happened in one measured week of a replayed replication. */
export interface WeekListing {
  /** From 1. */
  readonly week: number;
  /** Monday 00:00 on the wall of the lab, and that of the next week: milliseconds since the stated start of the plan. */
  readonly from: number;
  readonly to: number;
  /** In the order in which they began; what goes on since an earlier week comes first. */
  readonly items: readonly WeekItem[];
}

/** Something that a machine or a person does, or that happens to a job. */
export interface WeekItem {
  /** `step`: work for jobs; `upkeep`: repair, maintenance or cleaning by people; `chore`: the same without anybody. */
  readonly kind: 'step' | 'upkeep' | 'down' | 'chore' | 'other duties' | 'on duty' | 'event';
  /** Milliseconds since the stated start of the plan. */
  readonly from: number;
  /** The same as `from` for an event; null: it still went on when the replication ended. */
  readonly to: number | null;
  readonly end: ActivityEnd;
  /** For an event: what happened; for upkeep, chores and breakdowns: their name; else empty. */
  readonly what: string;
  readonly stage: string;
  readonly phase: string;
  readonly unit: string | null;
  readonly persons: readonly string[];
  /** Numbers of the jobs, from 0, ascending. */
  readonly jobs: readonly number[];
  readonly parts: readonly string[];
  readonly pieces: number;
}

/**
 * Everything that machines and people do in one week, and what happens to jobs.
 *
 * @param week from 1 to the number of measured weeks
 * @throws RangeError when the plan has no such week
 */
export function weekListingOf(replay: Replay, week: number): WeekListing {
  if (!(Number.isInteger(week) && week >= 1 && week <= replay.weeks)) {
    throw new RangeError(`There is no week ${week}: the plan has weeks 1 to ${replay.weeks}.`);
  }
  const from = replay.localTime.toElapsed((week - 1) * MILLISECONDS_PER_WEEK);
  const to = replay.localTime.toElapsed(week * MILLISECONDS_PER_WEEK);
  const before = replay.entries.filter(({ time, what }) => time < to && what !== 'has waited');
  const going = activitiesOf(replay.entries).filter(
    (activity) => activity.from < to && (activity.from >= from || (activity.to ?? replay.endedAt) > from),
  );
  const items = [
    ...going.map(activityItem),
    ...before.filter(({ time, what }) => time >= from && what in EVENTS).map(eventItem),
  ];
  return { week, from, to, items: together(items).sort((a, b) => a.from - b.from || rankOf(a) - rankOf(b)) };
}

const EVENTS: Readonly<Partial<Record<TraceEntry['what'], true>>> = {
  'job arrives': true,
  'job ends': true,
  'job is cancelled': true,
  'job is revised': true,
  'parts are rejected': true,
};

/** At one moment: who comes, what ends for good, what arrives, then what begins. */
function rankOf({ kind, what }: WeekItem): number {
  if (kind === 'on duty') return 0;
  if (kind !== 'event') return 3;
  return what === 'job arrives' ? 2 : 1;
}

function activityItem({ entry, from, to, end }: Activity): WeekItem {
  const kind = kindOf(entry);
  const isNamed = kind === 'upkeep' || kind === 'down' || kind === 'chore';
  return { ...itemOf(entry), kind, from, to, end, what: isNamed ? (entry.stage ?? '') : '' };
}

function eventItem(entry: TraceEntry): WeekItem {
  return { ...itemOf(entry), kind: 'event', from: entry.time, to: entry.time, end: 'ends', what: entry.what };
}

function itemOf({ stage, phase, unit, persons, pieces, job, part }: TraceEntry) {
  return {
    stage: stage ?? '',
    phase: phase ?? '',
    unit,
    persons,
    jobs: job < 0 ? [] : [job],
    parts: part === null ? [] : [part],
    pieces,
  };
}

function kindOf({ what, job }: TraceEntry): WeekItem['kind'] {
  switch (what) {
    case 'breaks down':
      return 'down';
    case 'chore starts':
      return 'chore';
    case 'other duties start':
      return 'other duties';
    case 'on duty':
      return 'on duty';
    default:
      return job < 0 ? 'upkeep' : 'step';
  }
}

/** What was done for several jobs at once is one item with several jobs. */
function together(items: readonly WeekItem[]): WeekItem[] {
  const found = new Map<string, WeekItem>();
  for (const item of items) {
    const { jobs, parts, pieces, ...rest } = item;
    const isShared = item.kind === 'step' && (item.unit !== null || item.persons.length > 0);
    const key = JSON.stringify(isShared ? rest : [rest, jobs, found.size]);
    const known = found.get(key);
    found.set(
      key,
      known === undefined
        ? item
        : {
            ...known,
            jobs: [...new Set([...known.jobs, ...jobs])].sort((a, b) => a - b),
            parts: [...new Set([...known.parts, ...parts])].sort(),
            pieces: known.pieces + pieces,
          },
    );
  }
  return [...found.values()];
}
