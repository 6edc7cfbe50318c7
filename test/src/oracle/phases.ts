import type { AttendedWork, MachineGroup, StationStage } from '@buildweek/model';
import { changeFor, changeLength, printLength, runLength } from './durations.ts';
import type { Load } from './floor.ts';
import { first } from './floor.ts';
import type { Length } from './minutes.ts';
import { lengthOf, sum } from './minutes.ts';
import type { Hands, Machine, PlannedPhase } from './unit.ts';

/** What a build or batch goes through, phase by phase. */

export function handsOf(work: AttendedWork): Hands {
  return { skill: work.skill, persons: work.persons, mayPause: work.pausable };
}

/** The phases of a build in the machine, and what follows outside of it. */
export function buildPhases(
  machine: Machine,
  load: Load,
): { inside: PlannedPhase[]; outside: PlannedPhase | null; isFailing: boolean } {
  const { group } = machine;
  const inside: PlannedPhase[] = [];
  const change = changeFor(machine, first(load.lots).job.part.material);
  const lengthens = change?.attended === true && group.setUp !== null;
  if (group.prepare !== null) inside.push(attended('prepare', group.prepare));
  if (group.setUp !== null) {
    const setUp = attended('set-up', group.setUp);
    const length = lengthens ? sum([setUp.length, changeLength(change)]) : setUp.length;
    inside.push({ ...setUp, length });
  }
  if (change !== null && !lengthens) inside.push(unattended('set-up', changeLength(change)));
  if (group.warmUp !== null) inside.push(unattended('warm-up', lengthOf(group.warmUp)));
  const printing = printPhases(group, printLength(load.lots));
  const isFailing = alwaysFails(group) && printing.at(-1)?.length.actual !== 0;
  inside.push(...printing.map((phase) => (isFailing ? failing(phase) : phase)));
  const cooling = group.coolDown === null ? null : unattended('cool-down', lengthOf(group.coolDown.duration));
  const coolsInside = group.coolDown?.where === 'machine';
  if (cooling !== null && coolsInside) inside.push(cooling);
  if (group.unload !== null) inside.push(attended('unload', group.unload));
  return { inside, outside: coolsInside ? null : cooling, isFailing };
}

/**
 * The first layers are a part of the print that is watched. A build that fails does so when it begins to print by
 * itself: the only failure that is not left to chance is one that is certain at once.
 */
function printPhases(group: MachineGroup, print: Length): PlannedPhase[] {
  if (group.firstLayers === null) return [unattended('print', print)];
  const stated = lengthOf(group.firstLayers.duration);
  const watched = {
    actual: Math.min(stated.actual, print.actual),
    typical: Math.min(stated.typical, print.typical),
  };
  const rest = { actual: print.actual - watched.actual, typical: print.typical - watched.typical };
  return [
    { phase: 'first layers', length: watched, hands: handsOf(group.firstLayers) },
    unattended('print', rest),
  ];
}

function failing(planned: PlannedPhase): PlannedPhase {
  const { phase, length } = planned;
  return phase === 'print' ? { ...planned, length: { ...length, actual: 0 } } : planned;
}

/** @throws Error when it is a matter of chance */
function alwaysFails({ failure }: MachineGroup): boolean {
  if (failure === null) return false;
  if (failure.chancePerBuild !== 0 || failure.perPrintHour < 1e12 || failure.loses !== 'the build')
    throw new Error('The oracle draws no failures.');
  return true;
}

export function batchPhases(stage: StationStage, loads: readonly Load[]): PlannedPhase[] {
  const phases: PlannedPhase[] = [];
  if (stage.load !== null) phases.push(attended('load', stage.load));
  const { runAttendance } = stage;
  const hands: Hands | null =
    runAttendance === null
      ? null
      : { skill: runAttendance.skill, persons: runAttendance.persons, mayPause: runAttendance.pausable };
  phases.push({ phase: 'run', length: runLength(stage, loads), hands });
  if (stage.unload !== null) phases.push(attended('unload', stage.unload));
  return phases;
}

function attended(phase: PlannedPhase['phase'], work: AttendedWork): PlannedPhase {
  return { phase, length: lengthOf(work.duration), hands: handsOf(work) };
}

function unattended(phase: PlannedPhase['phase'], length: Length): PlannedPhase {
  return { phase, length, hands: null };
}
