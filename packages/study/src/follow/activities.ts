import type { TraceEntry } from '@buildweek/core';

/** Something that went on from one moment to another: two entries of a trace that belong together. */
export interface Activity {
  /** The entry that began it; of work that went on when the plan began, the one that ended it. */
  readonly entry: TraceEntry;
  /** Milliseconds, as in the trace. */
  readonly from: number;
  /** Null: it still went on when the replication ended. */
  readonly to: number | null;
  readonly end: ActivityEnd;
}

export type ActivityEnd =
  | 'ends'
  | 'pauses'
  | 'is broken off'
  /** The job was cancelled or revised meanwhile: what was going on is of no use to it any more. */
  | 'was for nothing'
  | 'goes on';

/** What begins something, and what kind of thing it is. */
const BEGINNINGS: Readonly<Partial<Record<TraceEntry['what'], string>>> = {
  'step starts': 'step',
  'step resumes': 'step',
  'breaks down': 'down',
  'chore starts': 'chore',
  'other duties start': 'other duties',
  'on duty': 'duty',
};

const ENDS: Readonly<Partial<Record<TraceEntry['what'], readonly [string, ActivityEnd]>>> = {
  'step ends': ['step', 'ends'],
  'step pauses': ['step', 'pauses'],
  'step is broken off': ['step', 'is broken off'],
  'is repaired': ['down', 'ends'],
  'chore ends': ['chore', 'ends'],
  'other duties end': ['other duties', 'ends'],
  'off duty': ['duty', 'ends'],
};

/**
 * Puts the beginnings and ends of a trace together, in the order of the ends. Parts of a job that are alike may be
 * in the same step at once; the first that began then counts as the first that ended, which leaves sums as they are.
 *
 * @param entries a trace, or the entries of one job, in order of time
 */
export function activitiesOf(entries: readonly TraceEntry[]): Activity[] {
  const activities: Activity[] = [];
  const open = new Map<string, TraceEntry[]>();
  for (const entry of entries) {
    const begins = BEGINNINGS[entry.what];
    const ends = ENDS[entry.what];
    if (entry.what === 'breaks down') activities.push(...brokenOff(open, entry));
    if (begins !== undefined) {
      const key = keyOf(begins, entry);
      open.set(key, [...(open.get(key) ?? []), entry]);
    } else if (ends !== undefined) {
      const [kind, end] = ends;
      const [begun, ...others] = take(open, keyOf(kind, entry));
      if (others.length > 0) open.set(keyOf(kind, entry), others);
      // The end of an attended chore or repair is written down with the task; that of the shift before the plan not.
      if (begun === undefined && (kind !== 'step' || entry.job < 0)) continue;
      const from = begun?.time ?? entries.find(({ job }) => job === entry.job)?.time ?? entry.time;
      activities.push({ entry: begun ?? entry, from, to: entry.time, end });
    } else if (entry.what === 'job is cancelled' || entry.what === 'job is revised') {
      for (const [key, begun] of open) {
        if (begun[0]?.job !== entry.job) continue;
        open.delete(key);
        activities.push(
          ...begun.map((one) => ({
            entry: one,
            from: one.time,
            to: entry.time,
            end: 'was for nothing' as const,
          })),
        );
      }
    }
  }
  for (const begun of open.values()) {
    activities.push(
      ...begun.map((entry) => ({ entry, from: entry.time, to: null, end: 'goes on' as const })),
    );
  }
  return activities;
}

/** Nobody writes down that a chore ends with a breakdown. */
function brokenOff(open: Map<string, TraceEntry[]>, { unit, time }: TraceEntry): Activity[] {
  const found: Activity[] = [];
  for (const [key, begun] of open) {
    const [entry] = begun;
    if (entry?.what !== 'chore starts' || entry.unit !== unit) continue;
    open.delete(key);
    found.push({ entry, from: entry.time, to: time, end: 'is broken off' });
  }
  return found;
}

function take(open: Map<string, TraceEntry[]>, key: string): TraceEntry[] {
  const found = open.get(key) ?? [];
  open.delete(key);
  return found;
}

function keyOf(kind: string, { job, stage, phase, unit, persons, pieces }: TraceEntry): string {
  return JSON.stringify([kind, job, stage, phase, unit, persons, pieces]);
}
