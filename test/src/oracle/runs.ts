import type { Floor, Task } from './floor.ts';
import { count, unitsOf } from './floor.ts';
import { enterStage, leaveStage } from './flow.ts';
import { isNoticedNow, leftAfterRepair, losesBuild, mayRunAlone } from './rules.ts';
import { breakOff, makeReady } from './tasks.ts';
import type { PlannedPhase, Run, Unit } from './unit.ts';

/** Builds and batches go through their phases, stand, are interrupted and go on. */

/** Begins the next phase of a build or batch; after the last one the unit is free. */
export function continueRun(floor: Floor, run: Run): void {
  const before = run.present;
  run.present = run.phases.shift() ?? null;
  run.unit.lastEndedAt = floor.now;
  // What has run by itself has to be noticed before people do the next thing.
  const endedUnseen = before !== null && before.hands === null && run.present?.hands !== null;
  if (run.present !== null && endedUnseen) {
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
  if (present === null) {
    end(floor, run);
    return;
  }
  run.standsFor = null;
  if (present.hands === null && !mayRunAlone(floor, unit, floor.now, typicalStretch(present, run.phases))) {
    run.standsFor = 'permission';
    return;
  }
  makeReady(floor, present, run.loads, run, unit.kind);
}

/** What stands for people to see it, or for permission, is looked at again every minute. */
export function lookAtStanding(floor: Floor): void {
  for (const { run, down } of unitsOf(floor)) {
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
export function typicalStretch(present: PlannedPhase, following: readonly PlannedPhase[]): number {
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
