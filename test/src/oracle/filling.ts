import type { Stage, StationGroup } from '@buildweek/model';
import type { Load } from './floor.ts';
import { first, piecesOf, stageOfLoad } from './floor.ts';
import { compareLoads } from './rank.ts';

/** What would go into a build or a batch together. */

const TOLERANCE = 1e-9;

/** Loads of one queue that may share a unit, first rank first. */
export interface LoadClass {
  readonly key: string;
  readonly loads: readonly Load[];
}

export interface Filling {
  readonly loads: readonly Load[];
  /** Pieces of the first load that go in; less than all when it is too large for one build. */
  readonly piecesOfFirst: number;
  readonly fill: number;
  /** Whether some load of the class does not fit any more. */
  readonly leavesSome: boolean;
}

export function classesOf(loads: readonly Load[]): LoadClass[] {
  const classes = new Map<string, Load[]>();
  for (const load of [...loads].sort(compareLoads)) {
    classes.set(load.key, [...(classes.get(load.key) ?? []), load]);
  }
  return [...classes].map(([key, members]) => ({ key, loads: members }));
}

/** Builds: machine group, material, settings, and what follows for the whole build. Batches: the stage. */
export function classKey(load: Load): string {
  const stage = stageOfLoad(load);
  if (stage.kind === 'station') return JSON.stringify(stage);
  if (stage.kind !== 'build') throw new Error(`Stage ${stage.name} has no queue of loads.`);
  const { job, stageIndex } = first(load.lots);
  const together: Stage[] = [];
  for (const following of job.part.stages.slice(stageIndex + 1)) {
    if (following.level !== 'build') break;
    together.push(following);
  }
  return JSON.stringify([stage.machineGroup, job.part.material, job.part.settings, together]);
}

/** Fills one build: the first of the list goes in, split if it must be; then whatever still fits. */
export function fillBuild(loads: readonly Load[], capacity: number): Filling {
  const seed = first(loads);
  const pieces = Math.min(piecesOf(seed), Math.floor(capacity / spaceOfPiece(seed) + TOLERANCE));
  if (pieces < 1) throw new Error('Not even one piece fits into the build.');
  const filling = { loads: [seed], fill: pieces * spaceOfPiece(seed), leavesSome: pieces < piecesOf(seed) };
  for (const load of loads.slice(1)) {
    const space = piecesOf(load) * spaceOfPiece(load);
    if (filling.fill + space <= capacity + TOLERANCE) {
      filling.loads.push(load);
      filling.fill += space;
    } else {
      filling.leavesSome = true;
    }
  }
  return { ...filling, piecesOfFirst: pieces };
}

/** Fills one batch: a job that is larger than the station is split, a whole build that is larger runs alone. */
export function fillBatch(loads: readonly Load[], capacity: number, unit: StationGroup['unit']): Filling {
  const seed = first(loads);
  const isSplit = unit === 'parts' && stageOfLoad(seed).level === 'job' && piecesOf(seed) > capacity;
  const piecesOfFirst = isSplit ? Math.floor(capacity + TOLERANCE) : piecesOf(seed);
  const fill = isSplit ? piecesOfFirst : amountOf(seed, unit);
  const filling = { loads: [seed], fill, leavesSome: isSplit };
  for (const load of loads.slice(1)) {
    const amount = amountOf(load, unit);
    if (filling.fill + amount <= capacity + TOLERANCE) {
      filling.loads.push(load);
      filling.fill += amount;
    } else {
      filling.leavesSome = true;
    }
  }
  return { ...filling, piecesOfFirst };
}

export function isFull(filling: Filling, fullShare: number, capacity: number): boolean {
  return filling.leavesSome || filling.fill >= fullShare * capacity - TOLERANCE;
}

function spaceOfPiece(load: Load): number {
  return first(load.lots).job.part.space;
}

function amountOf(load: Load, unit: StationGroup['unit']): number {
  switch (unit) {
    case 'parts':
      return piecesOf(load);
    case 'jobs':
      return load.lots.length;
    case 'builds':
      return 1;
    case 'box volume':
      throw new Error('The oracle knows no shapes.');
  }
}
