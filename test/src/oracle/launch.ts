import type { ClockChange, MachineGroup } from '@buildweek/model';
import { changeFor, changeLength, printLength, typicalRest } from './durations.ts';
import type { Filling, LoadClass } from './filling.ts';
import { fillBuild, isFull } from './filling.ts';
import type { Floor, Load, Lot, Task } from './floor.ts';
import { first, isOnDuty, stageOfLoad } from './floor.ts';
import { nextClosing } from './last-call.ts';
import type { Length } from './minutes.ts';
import { lengthOf, minutes, NO_TIME, sum } from './minutes.ts';
import type { Machine } from './unit.ts';
import { isIdle } from './unit.ts';
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
  return loads.filter((load) => launchTimeSince(floor, group, load.readyAt));
}

function isAtRisk(floor: Floor, load: Load): boolean {
  return load.lots.some((lot) => {
    const { dueAt } = lot.job;
    return dueAt !== null && floor.now >= dueAt - typicalRest(lot, floor.lab.machines);
  });
}

/** Whether a launch time came after the load was ready, strictly, and not later than now. */
function launchTimeSince(floor: Floor, group: MachineGroup, readyAt: number): boolean {
  const launchTimes = floor.launchTimes.get(group) ?? [];
  return launchTimes.some((minute) => readyAt < minute && minute <= floor.now);
}

/** The minutes at which a group launches by the clock on the wall. */
export function launchTimesOf(group: MachineGroup, changes: readonly ClockChange[], weeks: number): number[] {
  const { fixedHours } = group.launch;
  if (fixedHours === null) return [];
  const ofWeek = new Set(fixedHours.map(minutes));
  const all = Array.from({ length: weeks * WEEK }, (_, minute) => minute);
  return all.filter((minute) => ofWeek.has(localOf(minute, changes) % WEEK));
}

/**
 * Whether it is the last moment before closing at which work on the build can begin, or later: what needs hands
 * has to fit as often as the people on duty have set-ups to share, and then what runs by itself until the print.
 */
export function isLastCall(floor: Floor, machine: Machine, loadClass: LoadClass): boolean {
  const { setUp } = machine.group;
  if (setUp === null) return false;
  const next = nextClosing(floor, setUp.skill);
  if (next === null) return false;
  const { byHand, byItself } = untilPrint(machine, first(loadClass.loads));
  return floor.now >= next.closing - byHand.typical * turns(floor, setUp.skill) - byItself.typical;
}

/** How many set-ups one after the other: those that wait for hands, and those that the last call would start. */
function turns(floor: Floor, skill: string): number {
  const waiting = floor.tasks.filter(
    (task) => isSetUp(task) && task.hands?.skill === skill && task.endsAt === null,
  ).length;
  const groups = floor.lab.machines.filter(
    (group) => group.launch.beforeClosing && group.setUp?.skill === skill,
  );
  const builds = groups.map((group) =>
    Math.min(idleMachines(floor, group).length, loadsFor(floor, group).length),
  );
  const persons = floor.people.filter(
    (person) => person.group.skills.includes(skill) && isOnDuty(person, floor.now),
  ).length;
  const setUps = builds.reduce((total, count) => total + count, waiting);
  return Math.max(1, Math.ceil(setUps / Math.max(1, persons)));
}

/** Work that gets a machine ready. */
function isSetUp({ phase }: Task): boolean {
  return phase === 'prepare' || phase === 'set-up' || phase === 'first layers';
}

function untilPrint(machine: Machine, seed: Load): { byHand: Length; byItself: Length } {
  const { group } = machine;
  const change = changeFor(machine, first(seed.lots).job.part.material);
  return {
    byHand: sum([
      group.prepare === null ? NO_TIME : lengthOf(group.prepare.duration),
      group.setUp === null ? NO_TIME : lengthOf(group.setUp.duration),
      change?.attended === true ? changeLength(change) : NO_TIME,
      group.firstLayers === null ? NO_TIME : lengthOf(group.firstLayers.duration),
    ]),
    byItself: sum([
      change?.attended === false ? changeLength(change) : NO_TIME,
      group.warmUp === null ? NO_TIME : lengthOf(group.warmUp),
    ]),
  };
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
  const { byHand, byItself } = untilPrint(machine, first(filling.loads));
  const watched = machine.group.firstLayers === null ? NO_TIME : lengthOf(machine.group.firstLayers.duration);
  const print = printLength(inBuild);
  const inside = sum([
    byHand,
    byItself,
    // The first layers, which are among what is done by hand, are a part of the print.
    { actual: 0, typical: Math.max(0, print.typical - watched.typical) },
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

/** Loads that wait for a machine of the group. */
export function loadsFor(floor: Floor, group: MachineGroup): Load[] {
  return floor.waiting.filter((load) => {
    const stage = stageOfLoad(load);
    return stage.kind === 'build' && stage.machineGroup === group.name;
  });
}

export function idleMachines(floor: Floor, group: MachineGroup): Machine[] {
  return floor.machines.filter((machine) => machine.group === group && isIdle(machine));
}
