import type { MachineGroup, StationGroup, WorkKind } from '@buildweek/model';
import type { Filling } from './filling.ts';
import { classesOf, fillBatch, fillBuild, isFull } from './filling.ts';
import type { Floor, Load, Lot, Person } from './floor.ts';
import { count, first, piecesOf, remove, stageOfLoad } from './floor.ts';
import { interruptFor } from './interruption.ts';
import {
  chooseMachine,
  idleMachines,
  isLastCall,
  launchable,
  loadsFor,
  readyAfterOpening,
} from './launch.ts';
import { minutes } from './minutes.ts';
import { batchPhases, buildPhases } from './phases.ts';
import type { Rank } from './rank.ts';
import { compare, compareLoads, compareServed, rankOf, rankOfTask } from './rank.ts';
import { mayRunAlone } from './rules.ts';
import { continueRun } from './runs.ts';
import { begin, findWorkers } from './tasks.ts';
import type { Hands, Machine, PlannedPhase, Run, Unit } from './unit.ts';
import { isIdle } from './unit.ts';

/** Something that could begin now if its hands were there. */
interface Candidate {
  readonly rank: Rank;
  readonly kind: WorkKind;
  readonly readyAt: number;
  readonly readyOrder: number;
  /** Begins it when it can; says whether it did. */
  readonly tryToBegin: () => boolean;
}

/** Begins the first-ranked of all that can begin, and looks again, until nothing more can. */
export function dispatch(floor: Floor): void {
  if (floor.waiting.length === 0 && floor.tasks.every((task) => task.endsAt !== null)) return;
  for (;;) {
    const candidates = candidatesOf(floor);
    const begun = candidates.find((candidate) => candidate.tryToBegin());
    if (begun === undefined) return;
    if (candidates.some((other) => other !== begun && areEqual(floor, begun, other)))
      floor.undecidedAt ??= floor.now;
  }
}

function candidatesOf(floor: Floor): Candidate[] {
  const candidates = [...tasksThatWait(floor), ...buildsToLaunch(floor), ...batchesToStart(floor)];
  return candidates.sort(
    (one, other) =>
      compareServed(floor, one, other) ||
      compare(one.readyAt, other.readyAt) ||
      compare(one.readyOrder, other.readyOrder),
  );
}

/** Two loads of one job that were ready at the same minute: no rule says which comes first. */
function areEqual(floor: Floor, one: Candidate, other: Candidate): boolean {
  return compareServed(floor, one, other) === 0 && one.readyAt === other.readyAt;
}

/** Whether nobody at all is in: then what begins with hands need not be looked at. */
function isDeserted(floor: Floor): boolean {
  return (floor.attendedSince[floor.now] ?? -1) < 0;
}

function tasksThatWait(floor: Floor): Candidate[] {
  if (isDeserted(floor)) return [];
  return floor.tasks
    .filter((task) => task.endsAt === null)
    .map((task) => ({
      rank: rankOfTask(task),
      kind: task.kind,
      readyAt: task.readyAt,
      readyOrder: task.readyOrder,
      tryToBegin: () => {
        if (task.hands === null) throw new Error('A step that needs no hands does not wait for them.');
        const workers = people(floor, task.hands, task.fit, rankOfTask(task));
        if (workers !== null) begin(floor, task, workers);
        return workers !== null;
      },
    }));
}

function buildsToLaunch(floor: Floor): Candidate[] {
  return floor.lab.machines.flatMap((group) => {
    if (isDeserted(floor) && (group.prepare ?? group.setUp) !== null) return [];
    const idle = idleMachines(floor, group);
    const waiting = loadsFor(floor, group);
    if (idle.length === 0 || waiting.length === 0 || !hasCarrier(floor, group)) return [];
    const possible = classesOf(waiting).flatMap((loadClass) => {
      const machine = chooseMachine(idle, first(first(loadClass.loads).lots).job.part.material);
      const loads = launchable(floor, machine, loadClass);
      if (loads.length === 0) return [];
      const filling = fillBuild(loads, group.capacity);
      const needsPermission = floor.permissions.has(group.name);
      if (needsPermission && !mayRun(floor, machine, planOf(machine, filling).inside)) return [];
      const lastCall = group.launch.beforeClosing && isLastCall(floor, machine, loadClass);
      return [{ machine, filling, lastCall }];
    });
    return preferred(floor, group, possible).map(({ machine, filling, lastCall }) => {
      const seed = first(filling.loads);
      return {
        rank: rankOf([seed]),
        kind: 'machine',
        readyAt: seed.readyAt,
        readyOrder: seed.readyOrder,
        tryToBegin: () => launch(floor, machine, filling, lastCall),
      };
    });
  });
}

interface PossibleBuild {
  readonly machine: Machine;
  readonly filling: Filling;
  readonly lastCall: boolean;
}

/**
 * At the last call, if the lab asks for it: of the builds for which people are there, only the one that ends soonest
 * after somebody is in again. When all would end before, by rank as ever.
 */
function preferred(floor: Floor, group: MachineGroup, possible: PossibleBuild[]): PossibleBuild[] {
  if (!group.launch.preferAttendedEnd || possible.length < 2) return possible;
  const atLastCall = possible.filter((build) => build.lastCall && mayBegin(floor, build));
  const night = atLastCall.flatMap((build) => {
    const after = readyAfterOpening(floor, build.machine, build.filling);
    return after === null || after < 0 ? [] : [{ build, after }];
  });
  if (night.length === 0) return possible;
  night.sort(
    (one, other) =>
      one.after - other.after ||
      compareLoads(first(one.build.filling.loads), first(other.build.filling.loads)),
  );
  return [first(night).build];
}

/** Whether something waits on that is equal to what goes in: no rule says which of the two it should have been. */
function noteOpenChoice(floor: Floor, { loads }: Filling): void {
  const isOpen = floor.waiting.some(
    (other) =>
      !loads.includes(other) &&
      loads.some(
        (load) =>
          load.key === other.key &&
          load.readyAt === other.readyAt &&
          rankOf([load]).job === rankOf([other]).job,
      ),
  );
  if (isOpen) floor.undecidedAt ??= floor.now;
}

function launch(floor: Floor, machine: Machine, filling: Filling, lastCall: boolean): boolean {
  const seed = first(filling.loads);
  const seedLot = first(seed.lots);
  const planned = planOf(machine, filling);
  const [inBuild] = planned.lots;
  const build: Load = {
    lots: filling.loads.flatMap((load) => load.lots),
    readyAt: seed.readyAt,
    readyOrder: seed.readyOrder,
    key: '',
  };
  const workers = workersToBegin(floor, first(planned.inside), rankOf([seed]));
  if (workers === null) return false;

  const whole = filling.piecesOfFirst === piecesOf(seed);
  if (lastCall) {
    const isChange = machine.material !== null && machine.material !== seedLot.job.part.material;
    count(floor, isChange ? 'last call with another material' : 'last call');
  }
  noteOpenChoice(floor, filling);
  for (const load of whole ? filling.loads : filling.loads.slice(1)) remove(floor.waiting, load);
  if (!whole && inBuild !== undefined) {
    seedLot.pieces -= filling.piecesOfFirst;
    seedLot.job.lots.push(inBuild);
    build.lots[0] = inBuild;
  }
  if (machine.group.carrier !== null)
    floor.carriers.push({ pool: machine.group.carrier, holders: [...build.lots] });
  machine.material = seedLot.job.part.material;
  const { inside: phases, outside, isFailing } = planned;
  const run = { unit: machine, loads: [build], present: null, standsFor: null, phases, outside, isFailing };
  beginRun(floor, run, workers);
  return true;
}

/** What a build would go through, and the lots in it; of the first one only the pieces that go in. */
function planOf(machine: Machine, filling: Filling) {
  const [seedLot, ...more] = filling.loads.flatMap((load) => load.lots);
  if (seedLot === undefined) throw new Error('There is nothing in the build.');
  const lots: Lot[] = [{ ...seedLot, pieces: filling.piecesOfFirst }, ...more];
  const { readyAt, readyOrder } = first(filling.loads);
  return { lots, ...buildPhases(machine, { lots, readyAt, readyOrder, key: '' }) };
}

/**
 * Whether what would run by itself, after those before it have typically done their work, may do so. The first
 * layers count with the print that they are a part of.
 */
function mayRun(floor: Floor, unit: Unit, phases: readonly PlannedPhase[]): boolean {
  const isAlone = ({ phase, hands }: PlannedPhase): boolean => hands === null || phase === 'first layers';
  const position = phases.findIndex(isAlone);
  if (position < 0) return true;
  const typical = (part: readonly PlannedPhase[]): number =>
    part.reduce((sum, phase) => sum + phase.length.typical, 0);
  const stretch = phases.slice(position).filter(isAlone);
  const may = mayRunAlone(floor, unit, floor.now + typical(phases.slice(0, position)), typical(stretch));
  if (!may) count(floor, 'is not launched without permission');
  return may;
}

function hasCarrier(floor: Floor, group: MachineGroup): boolean {
  const pool = floor.lab.carriers.find((candidate) => candidate.name === group.carrier);
  if (pool === undefined) return true;
  return floor.carriers.filter((carrier) => carrier.pool === pool.name).length < pool.count;
}

function batchesToStart(floor: Floor): Candidate[] {
  return floor.lab.stations.flatMap((group) => {
    const station = floor.stations.find((candidate) => candidate.group === group && isIdle(candidate));
    if (station === undefined) return [];
    const waiting = floor.waiting.filter((load) => {
      const stage = stageOfLoad(load);
      return stage.kind === 'station' && stage.stationGroup === group.name;
    });
    return classesOf(waiting).flatMap(({ loads }) => {
      const stage = stageOfLoad(first(loads));
      if (stage.kind !== 'station') throw new Error(`Stage ${stage.name} is not at a station.`);
      if (isDeserted(floor) && (stage.load ?? stage.runAttendance) !== null) return [];
      const filling = fillBatch(loads, group.capacity, group.unit);
      if (!mayStart(floor, group, filling)) return [];
      const { batch, rest } = splitBatch(filling);
      const phases = batchPhases(stage, batch);
      if (!mayRun(floor, station, phases)) return [];
      const candidate: Candidate = {
        rank: rankOf(filling.loads),
        kind: 'station',
        readyAt: first(filling.loads).readyAt,
        readyOrder: first(filling.loads).readyOrder,
        tryToBegin: () => {
          const workers = workersToBegin(floor, first(phases), rankOf(filling.loads));
          if (workers === null) return false;
          noteOpenChoice(floor, filling);
          for (const load of rest === null ? filling.loads : filling.loads.slice(1))
            remove(floor.waiting, load);
          if (rest !== null) {
            const split = first(first(batch).lots);
            rest.pieces -= split.pieces;
            rest.job.lots.push(split);
          }
          const run: Run = {
            unit: station,
            loads: batch,
            present: null,
            standsFor: null,
            phases,
            outside: null,
            isFailing: false,
          };
          beginRun(floor, run, workers);
          return true;
        },
      };
      return [candidate];
    });
  });
}

/** What goes into a station; of a job that is too large a lot of its own, and `rest` is the lot that it comes from. */
function splitBatch({ loads, piecesOfFirst }: Filling): { batch: readonly Load[]; rest: Lot | null } {
  const [seed, ...more] = loads;
  const lot = seed?.lots[0];
  if (seed === undefined || lot === undefined || piecesOfFirst === piecesOf(seed)) {
    return { batch: loads, rest: null };
  }
  return { batch: [{ ...seed, lots: [{ ...lot, pieces: piecesOfFirst }] }, ...more], rest: lot };
}

function mayStart(floor: Floor, group: StationGroup, filling: Filling): boolean {
  if (isFull(filling, group.fullShare, group.capacity)) return true;
  return group.waitedHours !== null && floor.now - first(filling.loads).readyAt >= minutes(group.waitedHours);
}

/** Nobody is needed: an empty list. Somebody is needed and not there: null. */
function workersToBegin(floor: Floor, phase: PlannedPhase, rank: Rank): Person[] | null {
  if (phase.hands === null) return [];
  const { actual, typical } = phase.length;
  const fit = floor.lab.dispatch.fitOn === 'drawn' ? actual : typical;
  return people(floor, phase.hands, phase.hands.mayPause ? null : fit, rank);
}

/** Whether people are there for the first work on a build, or could be freed for it because it is rush. */
function mayBegin(floor: Floor, { machine, filling }: PossibleBuild): boolean {
  const { hands, length } = first(planOf(machine, filling).inside);
  if (hands === null) return true;
  if (floor.lab.dispatch.rushInterrupts && rankOf([first(filling.loads)]).rush === 0) return true;
  const fit = floor.lab.dispatch.fitOn === 'drawn' ? length.actual : length.typical;
  return findWorkers(floor, hands, hands.mayPause ? null : fit) !== null;
}

/** Those who are free, or can be freed because it is rush. */
function people(floor: Floor, hands: Hands, fit: number | null, rank: Rank): Person[] | null {
  return findWorkers(floor, hands, fit) ?? (rank.rush === 0 ? interruptFor(floor, hands, fit) : null);
}

/** The content is fixed; the first phase begins at this instant. */
function beginRun(floor: Floor, run: Run, workers: Person[]): void {
  run.unit.run = run;
  continueRun(floor, run);
  const task = floor.tasks.find((candidate) => candidate.run === run);
  if (workers.length > 0 && task !== undefined) begin(floor, task, workers);
}
