import type { AttendedWork, StationStage } from '@buildweek/model';
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
): { inside: PlannedPhase[]; outside: PlannedPhase | null } {
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
  inside.push(unattended('print', printLength(load.lots)));
  const cooling = group.coolDown === null ? null : unattended('cool-down', lengthOf(group.coolDown.duration));
  const coolsInside = group.coolDown?.where === 'machine';
  if (cooling !== null && coolsInside) inside.push(cooling);
  if (group.unload !== null) inside.push(attended('unload', group.unload));
  return { inside, outside: coolsInside ? null : cooling };
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
