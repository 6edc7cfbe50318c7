import type {
  DurationBasis,
  MachineGroup,
  MaterialChange,
  Stage,
  StationStage,
  WorkStage,
} from '@buildweek/model';
import type { Load, Lot } from './floor.ts';
import { piecesOf } from './floor.ts';
import type { Length } from './minutes.ts';
import { lengthOf, longest, NO_TIME, sum, times } from './minutes.ts';
import type { Machine } from './unit.ts';

/**
 * What is said of a load: once for each job, for each piece, or once for all. What is said of a job is said of
 * all its pieces: those of a job that was split take their share of it.
 */
function counted(once: Length, basis: DurationBasis, load: Load): Length {
  switch (basis) {
    case 'build':
    case 'batch':
      return once;
    case 'job':
      return sum(load.lots.map((lot) => times(once, lot.pieces / lot.job.quantity)));
    case 'part':
      return times(once, piecesOf(load));
  }
}

export function workLength(stage: WorkStage, load: Load): Length {
  return counted(lengthOf(stage.work.duration), stage.basis, load);
}

/** The run of a batch: the longest of its loads. */
export function runLength(stage: StationStage, loads: readonly Load[]): Length {
  return longest(loads.map((load) => counted(lengthOf(stage.run), stage.basis, load)));
}

/** Print time of what is in the build: the longest fixed part, and the sum over all pieces. */
export function printLength(lots: readonly Lot[]): Length {
  const models = lots.map((lot) => {
    const { print } = lot.job.part;
    if (print?.kind !== 'typed') throw new Error(`Part ${lot.job.part.name} has no typed print time.`);
    return { perBuild: lengthOf(print.perBuild), pieces: times(lengthOf(print.perPart), lot.pieces) };
  });
  return sum([longest(models.map((model) => model.perBuild)), ...models.map((model) => model.pieces)]);
}

/** The change that a machine needs for a material; null when it needs none. */
export function changeFor(machine: Machine, material: string): MaterialChange | null {
  if (machine.material === null || machine.material === material) return null;
  const matching = machine.group.materialChanges.find(
    (change) =>
      (change.from === null || change.from === machine.material) &&
      (change.to === null || change.to === material),
  );
  return matching ?? null;
}

export function changeLength(change: MaterialChange | null): Length {
  return change === null ? NO_TIME : lengthOf(change.duration);
}

/** Minutes that the rest of the route typically takes a lot that waits for its build, without any waiting. */
export function typicalRest(lot: Lot, groups: readonly MachineGroup[]): number {
  const stages = lot.job.part.stages.slice(lot.stageIndex);
  return sum(stages.map((stage) => stageLength(stage, lot, groups))).typical;
}

function stageLength(stage: Stage, lot: Lot, groups: readonly MachineGroup[]): Length {
  // The promise is that of the whole job: what is said of a job is still to come in full, also for a part of it.
  const whole = { ...lot, job: { ...lot.job, quantity: lot.pieces } };
  const alone: Load = { lots: [whole], readyAt: 0, readyOrder: 0, key: '' };
  switch (stage.kind) {
    case 'wait':
      return lengthOf(stage.duration);
    case 'work':
      return workLength(stage, alone);
    case 'station':
      return sum([optional(stage.load), runLength(stage, [alone]), optional(stage.unload)]);
    case 'build': {
      const group = groups.find((candidate) => candidate.name === stage.machineGroup);
      if (group === undefined) throw new Error(`No machine group is named ${stage.machineGroup}.`);
      return sum([
        optional(group.prepare),
        optional(group.setUp),
        group.warmUp === null ? NO_TIME : lengthOf(group.warmUp),
        printLength([lot]),
        optional(group.coolDown),
        optional(group.unload),
      ]);
    }
  }
}

function optional(work: { readonly duration: Parameters<typeof lengthOf>[0] } | null): Length {
  return work === null ? NO_TIME : lengthOf(work.duration);
}
