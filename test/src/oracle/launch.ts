import type { MachineGroup } from '@buildweek/model';
import { changeFor, changeLength, printLength, typicalRest } from './durations.ts';
import type { Filling, LoadClass } from './filling.ts';
import { fillBuild, isFull } from './filling.ts';
import type { Floor, Load, Lot, Machine } from './floor.ts';
import { first } from './floor.ts';
import { nextClosing } from './last-call.ts';
import type { Length } from './minutes.ts';
import { lengthOf, minutes, NO_TIME, sum } from './minutes.ts';
import { localOf } from './wall-clock.ts';

const WEEK = 7 * 24 * 60;

/** The loads of a class that may be built now on this machine; none when no launch condition holds. */
export function launchable(floor: Floor, machine: Machine, loadClass: LoadClass): readonly Load[] {
  const { group } = machine;
  const { launch } = group;
  const { loads } = loadClass;
  const atOnce =
    launch.fullShare === null &&
    launch.waitedHours === null &&
    launch.fixedHours === null &&
    !launch.beforeClosing &&
    !launch.promiseAtRisk;
  if (atOnce) return loads;
  if (launch.fullShare !== null) {
    if (isFull(fillBuild(loads, group.capacity), launch.fullShare, group.capacity)) return loads;
  }
  if (launch.waitedHours !== null && floor.now - first(loads).readyAt >= minutes(launch.waitedHours))
    return loads;
  if (launch.promiseAtRisk && loads.some((load) => isAtRisk(floor, load))) return loads;
  if (launch.beforeClosing && isLastCall(floor, machine, loadClass)) return loads;
  const { fixedHours } = launch;
  return fixedHours === null ? [] : loads.filter((load) => launchTimeSince(floor, fixedHours, load.readyAt));
}

function isAtRisk(floor: Floor, load: Load): boolean {
  return load.lots.some((lot) => {
    const { dueAt } = lot.job;
    return dueAt !== null && floor.now >= dueAt - typicalRest(lot, floor.lab.machines);
  });
}

/** Whether a launch time came after the load was ready, strictly, and not later than now. */
function launchTimeSince(floor: Floor, fixedHours: readonly number[], readyAt: number): boolean {
  for (let minute = readyAt + 1; minute <= floor.now; minute++) {
    const ofWeek = localOf(minute, floor.lab.clockChanges) % WEEK;
    if (fixedHours.some((hour) => minutes(hour) === ofWeek)) return true;
  }
  return false;
}

/** Whether it is the last moment before closing at which work on the build can begin, or later. */
export function isLastCall(floor: Floor, machine: Machine, loadClass: LoadClass): boolean {
  const { setUp } = machine.group;
  if (setUp === null) return false;
  const next = nextClosing(floor, setUp.skill);
  if (next === null) return false;
  const own = untilPrint(machine, first(loadClass.loads)).typical;
  return floor.now >= next.closing - own - setUpsWaiting(floor, setUp.skill);
}

/** Set-ups that wait for hands with the same skill, of builds that hold their machine already. */
function setUpsWaiting(floor: Floor, skill: string): number {
  const waiting = floor.tasks.filter(
    (task) => task.phase === 'set-up' && task.hands?.skill === skill && task.endsAt === null,
  );
  return waiting.reduce((total, task) => total + task.remaining, 0);
}

function untilPrint(machine: Machine, seed: Load): Length {
  const { group } = machine;
  return sum([
    group.prepare === null ? NO_TIME : lengthOf(group.prepare.duration),
    group.setUp === null ? NO_TIME : lengthOf(group.setUp.duration),
    changeLength(changeFor(machine, first(seed.lots).job.part.material)),
    group.warmUp === null ? NO_TIME : lengthOf(group.warmUp),
  ]);
}

/**
 * Minutes from the next attended hour until the build would be ready to be unloaded, if it began now; negative
 * when it would be ready before. Null when there is no closing to come.
 */
export function readyAfterOpening(floor: Floor, machine: Machine, filling: Filling): number | null {
  const { setUp, coolDown } = machine.group;
  const next = setUp === null ? null : nextClosing(floor, setUp.skill);
  if (next === null) return null;
  const lots: Lot[] = filling.loads.flatMap((load) => load.lots);
  const seedLot = first(lots);
  const inBuild = [{ ...seedLot, pieces: filling.piecesOfFirst }, ...lots.slice(1)];
  const inside = sum([
    untilPrint(machine, first(filling.loads)),
    printLength(inBuild),
    coolDown?.where === 'machine' ? lengthOf(coolDown.duration) : NO_TIME,
  ]);
  return floor.now + inside.typical - next.opens;
}

/** Among idle machines: the one that holds the material, then the shortest typical change, then the number. */
export function chooseMachine(machines: readonly Machine[], material: string): Machine {
  const cost = (machine: Machine): number =>
    machine.material === material ? -1 : changeLength(changeFor(machine, material)).typical;
  return first([...machines].sort((one, other) => cost(one) - cost(other)));
}

export function idleMachines(floor: Floor, group: MachineGroup): Machine[] {
  return floor.machines.filter((machine) => machine.group === group && machine.run === null);
}
