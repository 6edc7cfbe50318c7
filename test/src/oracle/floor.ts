import type { Lab, MachineGroup, PartType, PeopleGroup, Phase, Stage, WorkKind } from '@buildweek/model';
import type { Rank } from './rank.ts';
import type { Hands, Machine, Run, Station, Unit, UpkeepItem } from './unit.ts';

/** Everything that is true in the lab at one minute. */
export interface Floor {
  readonly lab: Lab;
  /** Elapsed minutes since the start of the plan. */
  now: number;
  readonly jobs: Job[];
  readonly people: readonly Person[];
  readonly machines: readonly Machine[];
  readonly stations: readonly Station[];
  /** All machines, then all stations. */
  readonly units: readonly Unit[];
  /** Carriers that are not free. */
  readonly carriers: Carrier[];
  /** Loads that wait for a machine or for a station. */
  readonly waiting: Load[];
  /** For every minute since when somebody has been in without a break; -1 while nobody is. */
  readonly attendedSince: Int32Array;
  /** For each calendar of a service and every minute whether it is open: above 0. */
  readonly serviceHours: ReadonlyMap<string, Int32Array>;
  /** For each group that may not always run alone and every minute whether it may, or somebody is in: 1. */
  readonly permissions: ReadonlyMap<string, Uint8Array>;
  /** Steps that go on, and those that wait for hands. */
  readonly tasks: Task[];
  /** The next closing for each skill that was asked for, kept until it is over. */
  readonly closings: Map<string, Closing | null>;
  /** For each machine group the minutes at which it launches by the clock. */
  readonly launchTimes: ReadonlyMap<MachineGroup, readonly number[]>;
  /** Grows with everything that becomes ready or is started, to tell which came first. */
  order: number;
  readonly events: OracleEvent[];
  /**
   * The first minute at which two loads of one job, ready since the same minute, asked for the same thing: which
   * of them comes first is left open by the rules, and what follows is one of several right histories. Just so
   * when a machine fails in the same minute in which something on it ends.
   */
  undecidedAt: number | null;
  /** How often each kind of trouble came up while all was decided, to see that all do. */
  readonly happened: Map<string, number>;
}

/** When the last person with a skill goes for long, and when somebody is there again. */
export interface Closing {
  readonly closing: number;
  readonly opens: number;
}

export interface Job {
  readonly number: number;
  readonly part: PartType;
  readonly quantity: number;
  readonly rank: Rank;
  readonly arrivedAt: number;
  readonly dueAt: number | null;
  finishedAt: number | null;
  /** Where its pieces are; empty when it is finished. */
  lots: Lot[];
}

/** Pieces of one job that are together. */
export interface Lot {
  readonly job: Job;
  pieces: number;
  stageIndex: number;
  /** It is through with its stage and waits for the rest of its job. */
  waitsForRest: boolean;
}

/** What moves: one lot, or all lots of a build. */
export interface Load {
  lots: Lot[];
  readyAt: number;
  readyOrder: number;
  /** Loads of one key may share a unit; empty when it waits for none. */
  key: string;
}

export interface Person {
  readonly name: string;
  readonly number: number;
  readonly group: PeopleGroup;
  /** For every minute the end of the window that it lies in; 0 when off duty. */
  readonly windowEnds: Int32Array;
  task: Task | null;
  /** Until when the work at hand may overrun the window that is over; null when on duty or at home. */
  overtimeUntil: number | null;
}

/** One step of one load, build or batch, or a repair or chore. */
export interface Task {
  /** Null for a repair or chore. */
  readonly phase: Phase | null;
  /** Empty for a repair or chore. */
  readonly loads: readonly Load[];
  readonly run: Run | null;
  readonly upkeep: Upkeep | null;
  readonly kind: WorkKind;
  readonly hands: Hands | null;
  /** What is left: all of it when nobody has begun. */
  remaining: number;
  /** What must fit into the window; null when it may start with a minute left. */
  fit: number | null;
  mayPause: boolean;
  hasBegun: boolean;
  workers: Person[];
  /** Null while it waits for hands. */
  endsAt: number | null;
  readonly readyAt: number;
  readonly readyOrder: number;
  startOrder: number;
}

/** A repair or chore that is being done to a unit. */
export interface Upkeep {
  readonly unit: Unit;
  readonly item: UpkeepItem;
}

export interface Carrier {
  readonly pool: string;
  holders: Lot[];
}

/** One line of what happened; the fields mean what those of a trace of the simulator mean. */
export interface OracleEvent {
  /** Milliseconds. */
  readonly time: number;
  readonly what:
    | 'job arrives'
    | 'job ends'
    | 'step starts'
    | 'step pauses'
    | 'step resumes'
    | 'step ends'
    | 'step is broken off'
    | 'breaks down'
    | 'is repaired'
    | 'chore starts'
    | 'chore ends'
    | 'on duty'
    | 'off duty';
  readonly job: number;
  readonly part: string | null;
  readonly stage: string | null;
  readonly phase: string | null;
  readonly unit: string | null;
  readonly persons: readonly string[];
  readonly pieces: number;
}

export function stageOf(lot: Lot): Stage {
  const stage = lot.job.part.stages[lot.stageIndex];
  if (stage === undefined) throw new Error(`Job ${lot.job.number} has no stage ${lot.stageIndex}.`);
  return stage;
}

/** The stage that a load is at; for what was built together the stages of all its lots are equal. */
export function stageOfLoad(load: Load): Stage {
  return stageOf(first(load.lots));
}

export function piecesOf(load: Load): number {
  return load.lots.reduce((total, lot) => total + lot.pieces, 0);
}

export function first<Item>(items: readonly Item[]): Item {
  const item = items[0];
  if (item === undefined) throw new Error('There is nothing in the list.');
  return item;
}

export function remove<Item>(items: Item[], item: Item): void {
  const position = items.indexOf(item);
  if (position < 0) throw new Error('What is to be taken out is not in the list.');
  items.splice(position, 1);
}

export function count(floor: Floor, kind: string): void {
  if (floor.undecidedAt !== null) return;
  floor.happened.set(kind, (floor.happened.get(kind) ?? 0) + 1);
}

export function isOnDuty(person: Person, minute: number): boolean {
  return (person.windowEnds[minute] ?? 0) > 0;
}
