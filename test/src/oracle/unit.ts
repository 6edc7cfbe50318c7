import type { Breakdown, Chore, MachineGroup, Phase, StationGroup } from '@buildweek/model';
import type { Carrier, Load } from './floor.ts';
import type { Length } from './minutes.ts';

/** Machines and stations: what they hold, and in which state they are. */

export type Unit = Machine | Station;

export interface Machine extends Condition {
  readonly kind: 'machine';
  readonly name: string;
  readonly group: MachineGroup;
  material: string | null;
  run: Run | null;
}

export interface Station extends Condition {
  readonly kind: 'station';
  readonly name: string;
  readonly group: StationGroup;
  run: Run | null;
}

interface Condition {
  /** Among all machines, and all stations behind them. */
  readonly number: number;
  readonly items: readonly UpkeepItem[];
  /** Null while it is in order. */
  down: Down | null;
  /** The chore that holds it. */
  chore: UpkeepItem | null;
  /** What has to be cleared away after a failed build. */
  cleaning: Cleaning | null;
  /** The carrier of a build that was lost in it, until the repair ends. */
  heldCarrier: Carrier | null;
  /** The minute at which something on it ended last. */
  lastEndedAt: number;
}

/** A breakdown or chore, and how far off it is. */
export interface UpkeepItem {
  readonly name: string;
  readonly breakdown: Breakdown | null;
  readonly chore: Chore | null;
  /** Minutes of running or of the clock until it comes; null while it is there, or owed. */
  left: number | null;
  /** Since when a chore is owed; null when it is not. */
  owedSince: number | null;
}

interface Down {
  readonly item: UpkeepItem;
  /** Null until people know. */
  noticedAt: number | null;
  /** Whether the build in it is spoilt, which people do not know yet. */
  losesBuild: boolean;
  /** Minutes of the service's hours until it comes, and that it needs then. */
  response: number;
  visit: number;
}

export interface Cleaning {
  readonly item: UpkeepItem;
  readonly hands: Hands | null;
  readonly length: Length;
}

/** A build or a batch, from its first phase until the unit is free. */
export interface Run {
  readonly unit: Unit;
  readonly loads: readonly Load[];
  /** What goes on, or is to go on next; what is left of it when it was interrupted. */
  present: PlannedPhase | null;
  /** Whether it will be found to have failed. */
  readonly isFailing: boolean;
  /** What it is that holds up the present phase. */
  standsFor: 'notice' | 'permission' | null;
  /** What is still to come in the unit. */
  readonly phases: PlannedPhase[];
  /** What comes when the unit is free already: cool-down outside. */
  readonly outside: PlannedPhase | null;
}

export interface PlannedPhase {
  readonly phase: Phase;
  readonly length: Length;
  readonly hands: Hands | null;
}

export interface Hands {
  readonly skill: string;
  readonly persons: number;
  readonly mayPause: boolean;
}

/** Whether a build or batch could begin on it. */
export function isIdle(unit: Unit): boolean {
  return unit.run === null && unit.down === null && unit.chore === null && unit.cleaning === null;
}
