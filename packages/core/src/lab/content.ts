import { toMilliseconds } from '../kernel/clock.ts';
import type { CompiledUnitGroup } from './compiled-lab.ts';
import type { Load, Lot } from './load.ts';
import type { Simulation } from './simulation.ts';
import { roomIn } from './space.ts';
import type { Unit } from './unit.ts';
import type { UnitClass } from './unit-class.ts';

/** How much of a group's capacity a load takes, in the group's own unit. */
export function sizeOf(load: Load, group: CompiledUnitGroup): number {
  switch (group.capacityUnit) {
    case 'space':
      return load.space;
    case 'parts':
      return load.pieces;
    case 'builds':
      return 1;
    case 'box volume': {
      let volume = 0;
      for (let lot = load.lots; lot !== null; lot = lot.nextInLoad) volume += lot.pieces * lot.part.boxVolume;
      return volume;
    }
    case 'jobs': {
      let lots = 0;
      for (let lot = load.lots; lot !== null; lot = lot.nextInLoad) lots++;
      return lots;
    }
  }
}

/**
 * Puts a build together from what waits: the seed first, then in rank order what still fits; misfits are
 * skipped. A load that no empty machine could hold gives as many pieces as fit, and the rest goes on waiting.
 *
 * @returns the build, with all its lots; its fill is the sum of `space`
 */
export function takeBuild(simulation: Simulation, unitClass: UnitClass, group: CompiledUnitGroup): Load {
  const { units, loads } = simulation;
  const { shaped } = unitClass;
  const build = loads.emptyLoad();
  build.isBuild = true;
  shaped?.clear();
  let jobs = 0;
  let load = unitClass.seed;
  while (load !== null && jobs < group.mostJobs) {
    const next: Load | null = load.after;
    const lot = load.lots as Lot;
    const isAllowed = load.readyAt < unitClass.onlyReadyBefore;
    const isTaken =
      isAllowed &&
      (shaped === null ? build.space + load.space <= roomIn(group.capacity) : shaped.takes(lot, lot.pieces));
    if (isTaken) {
      units.leaveClass(unitClass, load);
      loads.dropLoad(load);
      loads.addLot(build, lot);
      jobs++;
    } else if (isAllowed && build.lots === null) {
      const pieces = mostPieces(unitClass, group, lot);
      shaped?.takes(lot, pieces);
      unitClass.waitingSize -= pieces * lot.job.part.space;
      units.chargeClassWait(unitClass, load);
      const split = loads.splitOff(load, lot, pieces);
      units.bookSplit(unitClass, load, split);
      loads.addLot(build, split);
      jobs++;
    }
    load = next;
  }
  return build;
}

/** Most pieces of a lot that an empty machine holds. */
function mostPieces(unitClass: UnitClass, group: CompiledUnitGroup, lot: Lot): number {
  const { shaped } = unitClass;
  return shaped === null
    ? Math.floor(roomIn(group.capacity) / lot.job.part.space)
    : shaped.mostPieces(lot.part.index);
}

/**
 * Whether something of what waits would be left out of a build that took as much as it can: then the build is full,
 * whatever its fill. Where parts state their space, the sum of it says so already.
 */
export function overflows(unitClass: UnitClass, group: CompiledUnitGroup): boolean {
  if (unitClass.loads.length >= group.mostJobs) return true;
  const { shaped } = unitClass;
  if (shaped === null) return false;
  shaped.clear();
  for (let load = unitClass.loads.first; load !== null; load = load.after) {
    const lot = load.lots as Lot;
    if (!shaped.takes(lot, lot.pieces)) return true;
  }
  return false;
}

/**
 * Typical milliseconds of the print of what `takeBuild` would put together now. Where shapes are packed, what is
 * counted stays counted, so that its cool-down can be asked for.
 */
export function typicalBuild(unitClass: UnitClass, group: CompiledUnitGroup): number {
  const { shaped } = unitClass;
  shaped?.clear();
  let left = roomIn(group.capacity);
  let longest = 0;
  let perPiece = 0;
  let jobs = 0;
  for (let load = unitClass.seed; load !== null && jobs < group.mostJobs; load = load.after) {
    if (load.readyAt >= unitClass.onlyReadyBefore) continue;
    const lot = load.lots as Lot;
    const most = jobs === 0 ? Math.min(load.pieces, mostPieces(unitClass, group, lot)) : load.pieces;
    const space = most * lot.part.space;
    if (shaped === null ? space > left : !shaped.takes(lot, most)) continue;
    jobs++;
    left -= space;
    longest = Math.max(longest, lot.part.print?.typicalPerBuild ?? 0);
    perPiece += most * (lot.part.print?.typicalPerPart ?? 0);
  }
  return shaped === null ? longest + perPiece : toMilliseconds(shaped.printHours);
}

/** Pieces of a load that go into an empty station: all of them, or as many as it holds of a job that is larger. */
function mostInBatch(load: Load, group: CompiledUnitGroup): number {
  // Whole builds go through together, and jobs and builds are counted whole.
  if (load.isBuild || group.capacityUnit === 'jobs' || group.capacityUnit === 'builds') return load.pieces;
  const size = sizeOf(load, group);
  if (size <= roomIn(group.capacity)) return load.pieces;
  return Math.max(1, Math.floor((roomIn(group.capacity) * load.pieces) / size));
}

/** Whether a station that has taken so much takes a whole load too; a build larger than the station runs alone. */
function fits(taken: number, load: Load, group: CompiledUnitGroup): boolean {
  if (taken === 0) return mostInBatch(load, group) === load.pieces;
  return taken + sizeOf(load, group) <= roomIn(group.capacity);
}

/**
 * @param measure of a load, and the share of it that would be taken
 * @returns the largest of what it says of what `takeBatch` would take
 */
export function largestInBatch(
  unitClass: UnitClass,
  group: CompiledUnitGroup,
  measure: (load: Load, share: number) => number,
): number {
  let largest = 0;
  let taken = 0;
  for (let load = unitClass.seed; load !== null && taken < group.capacity; load = load.after) {
    const share = taken === 0 ? mostInBatch(load, group) / load.pieces : 1;
    if (share === 1 && !fits(taken, load, group)) continue;
    taken += share * sizeOf(load, group);
    largest = Math.max(largest, measure(load, share));
  }
  return largest;
}

/**
 * Fills a station in rank order; misfits are skipped. A job larger than the station gives as many pieces as it holds,
 * and the rest goes on waiting; a whole build that is larger runs alone.
 *
 * @returns the first load of the batch; the others follow by `nextInUnit`
 */
export function takeBatch(
  simulation: Simulation,
  unitClass: UnitClass,
  unit: Unit,
  group: CompiledUnitGroup,
): Load {
  const { units } = simulation;
  let first: Load | null = null;
  let last: Load | null = null;
  let taken = 0;
  let load = unitClass.seed;
  while (load !== null) {
    const next: Load | null = load.after;
    let part: Load | null = null;
    if (fits(taken, load, group)) {
      units.leaveClass(unitClass, load);
      part = load;
    } else if (taken === 0) {
      part = splitBatch(simulation, unitClass, load, group);
    }
    if (part !== null) {
      taken += sizeOf(part, group);
      part.nextInUnit = null;
      if (last === null) first = part;
      else last.nextInUnit = part;
      last = part;
    }
    if (taken >= group.capacity) break;
    load = next;
  }
  unit.fill = Math.min(1, taken / group.capacity);
  return first as Load;
}

/** Takes as many pieces of a job as a station holds; the rest keeps its place in the queue. */
function splitBatch(
  simulation: Simulation,
  unitClass: UnitClass,
  load: Load,
  group: CompiledUnitGroup,
): Load {
  const { units, loads } = simulation;
  const pieces = mostInBatch(load, group);
  unitClass.waitingSize -= (pieces / load.pieces) * sizeOf(load, group);
  units.chargeClassWait(unitClass, load);
  const split = loads.splitOff(load, load.lots as Lot, pieces);
  units.bookSplit(unitClass, load, split);
  return loads.loadOf(split);
}
