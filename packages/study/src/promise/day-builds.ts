import type { TraceEntry } from '@buildweek/core';

/** Phases of a build in their order; one that comes again or before the last begins another build. */
const PHASES = ['prepare', 'set-up', 'warm-up', 'first layers', 'print', 'cool-down', 'unload'];
const LAST = PHASES.length - 1;

/** A build that was started, in one play. Times are elapsed milliseconds. */
export interface DayBuild {
  readonly machine: string;
  /** Numbers of the jobs in it, ascending, with their pieces. */
  readonly jobs: readonly { readonly job: number; readonly pieces: number }[];
  readonly startedAt: number;
  /** It was there when the trace began, and only its end is written down. */
  readonly wasRunning: boolean;
  /** Who began it; nobody where it begins by itself. */
  readonly persons: readonly string[];
  /** When it had printed and cooled down; null: not while it was written down. */
  readonly doneAt: number | null;
  /** When it was taken out; null: not while it was written down. */
  readonly emptiedAt: number | null;
  /** It failed, or its machine broke down. */
  readonly isLost: boolean;
}

/**
 * The builds that were started while a trace was written, in the order of their starts.
 *
 * @param machines names of the machines; everything else is left out
 */
export function buildsOf(trace: readonly TraceEntry[], machines: ReadonlySet<string>): DayBuild[] {
  const builds: OpenBuild[] = [];
  const current = new Map<string, OpenBuild>();
  for (const entry of trace) {
    const { unit, job, phase } = entry;
    if (unit === null || job < 0 || !machines.has(unit)) continue;
    const rank = PHASES.indexOf(phase ?? '');
    const open = current.get(unit);
    if (entry.what === 'step starts') {
      if (open === undefined || !open.goesOnWith(entry, rank)) {
        const begun = new OpenBuild(unit, entry, rank);
        builds.push(begun);
        current.set(unit, begun);
      } else open.starts(entry, rank);
    } else if (entry.what === 'step ends') open?.ends(entry, rank);
    else if (entry.what === 'step is broken off') open?.isBrokenOff();
  }
  return builds;
}

/** A build while the trace is gone through. */
class OpenBuild implements DayBuild {
  readonly machine: string;
  readonly startedAt: number;
  readonly persons: readonly string[];
  readonly wasRunning: boolean;
  doneAt: number | null = null;
  emptiedAt: number | null = null;
  isLost = false;
  /** By job. */
  private readonly pieces = new Map<number, number>();
  private readonly firstRank: number;
  private rank: number;
  private at: number;

  constructor(machine: string, entry: TraceEntry, rank: number) {
    this.machine = machine;
    this.startedAt = entry.time;
    this.persons = entry.persons;
    this.wasRunning = rank === LAST;
    this.firstRank = rank;
    this.rank = rank;
    this.at = entry.time;
    this.pieces.set(entry.job, entry.pieces);
  }

  get jobs(): DayBuild['jobs'] {
    return [...this.pieces].sort(([a], [b]) => a - b).map(([job, pieces]) => ({ job, pieces }));
  }

  /** What starts at the same moment is another lot of it; a later phase of its jobs is the same build. */
  goesOnWith({ time, job }: TraceEntry, rank: number): boolean {
    if (this.emptiedAt !== null || this.isLost) return false;
    return rank === this.rank ? time === this.at : rank > this.rank && this.pieces.has(job);
  }

  starts({ time, job, pieces }: TraceEntry, rank: number): void {
    // Everything in it begins its first phase in one moment.
    if (time === this.startedAt && rank === this.firstRank) {
      this.pieces.set(job, (this.pieces.get(job) ?? 0) + pieces);
    }
    this.rank = rank;
    this.at = time;
  }

  ends({ time }: TraceEntry, rank: number): void {
    if (rank === LAST) this.emptiedAt = time;
    else if (rank >= PHASES.indexOf('print')) this.doneAt = time;
  }

  isBrokenOff(): void {
    this.isLost = true;
  }
}

/** Machines that are down when a trace ends. */
export function downAtTheEnd(trace: readonly TraceEntry[]): ReadonlySet<string> {
  const down = new Set<string>();
  for (const { what, unit } of trace) {
    if (unit === null) continue;
    if (what === 'breaks down') down.add(unit);
    else if (what === 'is repaired') down.delete(unit);
  }
  return down;
}
