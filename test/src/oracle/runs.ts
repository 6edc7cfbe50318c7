import type { Floor, Task } from './floor.ts';
import { count, remove } from './floor.ts';
import { enterStage, leaveStage } from './flow.ts';
import { lengthOf, NO_TIME } from './minutes.ts';
import { handsOf } from './phases.ts';
import { isNoticedNow, leftAfterRepair, losesBuild, mayRunAlone } from './rules.ts';
import { breakOff, makeReady, makeUpkeepReady } from './tasks.ts';
import type { Cleaning, PlannedPhase, Run, Unit } from './unit.ts';

/** Builds and batches go through their phases, stand, are interrupted and go on. */

/** Begins the next phase of a build or batch; after the last one the unit is free. */
export function continueRun(floor: Floor, run: Run): void {
  const before = run.present;
  run.present = run.phases.shift() ?? null;
  run.unit.lastEndedAt = floor.now;
  const isOver = run.present === null || run.present.phase === 'unload';
  // What has run by itself has to be noticed before it is unloaded, and so has a failure before it is cleared.
  const isUnseen = before !== null && before.hands === null;
  if (isOver && isUnseen && (run.isFailing || run.present !== null)) {
    run.standsFor = 'notice';
    lookAt(floor, run);
  } else {
    enterPhase(floor, run);
  }
}

/** Begins the present phase as soon as nothing holds it up. */
export function enterPhase(floor: Floor, run: Run): void {
  const { present, unit } = run;
  if (run.standsFor === 'notice') return;
  if (run.isFailing && (present === null || present.phase === 'unload')) {
    clearFailed(floor, unit, present);
    return;
  }
  if (present === null) {
    end(floor, run);
    return;
  }
  run.standsFor = null;
  // What takes no time needs no permission, unless it is the run itself: that may have failed at its very start.
  const isTheRun = present.phase === 'print' || present.phase === 'run';
  const runsAlone = present.hands === null && (isTheRun || present.length.actual > 0);
  if (runsAlone && !mayRunAlone(floor, unit, floor.now, typicalStretch(present, run.phases))) {
    run.standsFor = 'permission';
    return;
  }
  makeReady(floor, present, run.loads, run, unit.kind);
}

/** What stands for people to see it, or for permission, is looked at again every minute. */
export function lookAtStanding(floor: Floor): void {
  for (const { run, down } of floor.units) {
    if (run === null) continue;
    if (run.standsFor === 'notice') lookAt(floor, run);
    else if (run.standsFor === 'permission' && down === null) enterPhase(floor, run);
    if (run.standsFor !== null) count(floor, `waits for ${run.standsFor}`);
  }
}

function lookAt(floor: Floor, run: Run): void {
  if (!isNoticedNow(floor, run.unit.group.noticing)) return;
  run.standsFor = null;
  if (run.unit.down === null) enterPhase(floor, run);
}

/**
 * A failure stops what goes on in a unit.
 *
 * @returns whether it spoils the build
 */
export function interruptRun(
  floor: Floor,
  unit: Unit,
  effect: 'loses the build' | 'build goes on after the repair',
): boolean {
  const { run } = unit;
  if (run === null || run.present === null) return false;
  const task = floor.tasks.find((candidate) => candidate.run === run);
  if (task === undefined) return false;
  const { phase, length, hands } = run.present;
  const remaining = task.endsAt === null ? task.remaining : task.endsAt - floor.now;
  const done = length.actual - remaining;
  run.present = { phase, hands, length: leftAfterRepair(phase, hands !== null, effect, length, done) };
  const isLost = task.endsAt !== null && losesBuild(unit, phase, effect);
  breakOff(floor, task);
  return isLost;
}

/** The parts of a failed build wait again; the machine is cleaned, or unloaded where no cleaning is stated. */
function clearFailed(floor: Floor, unit: Unit, unload: PlannedPhase | null): void {
  if (unit.kind !== 'machine') throw new Error('Only builds fail.');
  const stated = unit.group.failure?.cleaning ?? null;
  count(floor, 'a build fails');
  giveBackBuild(floor, unit);
  if (stated === null && unload?.hands == null) {
    freeHeldCarrier(floor, unit);
    return;
  }
  const item = { name: 'cleaning', breakdown: null, chore: null, left: null, owedSince: floor.now };
  const hands = stated === null ? (unload?.hands ?? null) : handsOf(stated);
  const length = stated === null ? (unload?.length ?? NO_TIME) : lengthOf(stated.duration);
  unit.cleaning = { item, hands, length };
  beginCleaning(floor, unit, unit.cleaning);
}

export function beginCleaning(floor: Floor, unit: Unit, { item, hands, length }: Cleaning): void {
  item.owedSince = floor.now;
  makeUpkeepReady(floor, { unit, item }, hands, length);
}

export function freeHeldCarrier(floor: Floor, unit: Unit): void {
  if (unit.heldCarrier !== null) remove(floor.carriers, unit.heldCarrier);
  unit.heldCarrier = null;
}

/** The parts of a lost build wait for a machine again, each job for itself. */
export function giveBackBuild(floor: Floor, unit: Unit): void {
  const { run } = unit;
  if (run === null) throw new Error(`${unit.name} holds nothing that could be lost.`);
  unit.run = null;
  const lots = run.loads.flatMap((load) => load.lots);
  const carrier = floor.carriers.find((candidate) => candidate.holders.some((lot) => lots.includes(lot)));
  if (carrier !== undefined) {
    carrier.holders = [];
    unit.heldCarrier = carrier;
  }
  for (const lot of lots) enterStage(floor, { lots: [lot], readyAt: floor.now, readyOrder: 0, key: '' });
}

/** Typical minutes from the beginning of a phase until people are needed. */
function typicalStretch(present: PlannedPhase, following: readonly PlannedPhase[]): number {
  let sum = 0;
  for (const phase of [present, ...following]) {
    if (phase.hands !== null) break;
    sum += phase.length.typical;
  }
  return sum;
}

/** A step has ended; what comes after it begins. */
export function afterTask(floor: Floor, task: Task): void {
  if (task.run === null) for (const load of task.loads) leaveStage(floor, load);
  else continueRun(floor, task.run);
}

function end(floor: Floor, run: Run): void {
  run.unit.run = null;
  if (run.outside !== null) {
    makeReady(floor, run.outside, run.loads, null, run.unit.kind);
    return;
  }
  for (const load of run.loads) leaveStage(floor, load);
}
