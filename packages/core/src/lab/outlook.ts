import type { Job } from './job.ts';
import type { Load, Lot } from './load.ts';
import type { Simulation } from './simulation.ts';
import { SPACE_TOLERANCE } from './space.ts';
import type { UnitClass } from './unit-class.ts';
import type { UnitGroup } from './unit-group.ts';

/** Jobs that wait for a group of machines; a job of which only some pieces wait counts by their share. */
export function waitingJobs(group: UnitGroup): number {
  let jobs = 0;
  for (const unitClass of group.classes) {
    for (let load = unitClass.loads.first; load !== null; load = load.after) jobs += load.weight;
  }
  return jobs;
}

/**
 * Whether a job that arrives would probably miss its promise if it were made in the lab: an estimate that can be made
 * on paper. It would be done at
 *
 *     now + typical work of all stages of its route + queue / machines of the group,
 *
 * all by the clock, where the queue is what the jobs that go before it typically need on the machines of its first
 * build: those of each material and settings fill as many builds as their space (or the most jobs of a build) asks
 * for, and take for these the time of a build and for each piece its own. Shifts, what runs just now, breakdowns, and
 * queues elsewhere are left out; the lead times that come of it are short rather than long.
 *
 * @param group position in the unit groups of the machines of its first build; -1: it has none
 * @returns false without a promise
 */
export function missesPromise(simulation: Simulation, job: Job, group: number): boolean {
  if (job.dueAt === Number.POSITIVE_INFINITY) return false;
  const queue = group < 0 ? 0 : queueBefore(simulation.units.groups[group], job);
  return simulation.now + typicalWork(job.part.stages, job.quantity) + queue > job.dueAt;
}

/** Typical milliseconds of stages for so many pieces, one after the other and without any waiting. */
export function typicalWork(
  stages: readonly { readonly typical: number; readonly typicalPerPiece: number }[],
  pieces: number,
  from = 0,
): number {
  let sum = 0;
  for (let stage = from; stage < stages.length; stage++) {
    sum += stages[stage].typical + (pieces - 1) * stages[stage].typicalPerPiece;
  }
  return sum;
}

/** Typical milliseconds until the machines of a group have done what goes before a job; Infinity without machines. */
function queueBefore(group: UnitGroup, job: Job): number {
  if (group.units.length === 0) return Number.POSITIVE_INFINITY;
  let sum = 0;
  for (const unitClass of group.classes) sum += buildsBefore(unitClass, group, job);
  return sum / group.units.length;
}

/** Typical machine milliseconds of the waiting builds of a class that go before a job. */
function buildsBefore(unitClass: UnitClass, group: UnitGroup, job: Job): number {
  const { capacity, mostJobs } = group.compiled;
  let space = 0;
  let jobs = 0;
  let pieces = 0;
  let perBuild = 0;
  for (let load = unitClass.loads.first; load !== null; load = load.after) {
    if (!goesBefore(load, job)) continue;
    const stage = (load.lots as Lot).definition;
    space += load.space;
    jobs++;
    pieces += load.pieces * stage.typicalPerPiece;
    perBuild = Math.max(perBuild, stage.typical - stage.typicalPerPiece);
  }
  const builds = Math.max(Math.ceil(space / capacity - SPACE_TOLERANCE), Math.ceil(jobs / mostJobs));
  return pieces + builds * perBuild;
}

/** Rush first, then the earliest promise; who is there already goes before who comes. */
function goesBefore(load: Load, job: Job): boolean {
  const rush = job.rush ? 0 : 1;
  return load.rush === rush ? load.dueAt <= job.dueAt : load.rush < rush;
}
