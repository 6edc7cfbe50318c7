import { type DurationBasis, type Lab, type PartType, type Stage, stepsOf } from '@buildweek/model';
import { toMilliseconds } from '../kernel/clock.ts';
import { createSampler } from '../kernel/sampler.ts';
import type { AttendanceCompiler } from './compile-attendance.ts';
import type { ClassCompiler } from './compile-classes.ts';
import { tailOf } from './compile-classes.ts';
import type { CompiledPart, CompiledStage } from './compiled-lab.ts';
import { type TypicalPrint, typicalPrintOf } from './typical-print.ts';

export function compilePart(
  part: PartType,
  index: number,
  lab: Lab,
  attendance: AttendanceCompiler,
  classes: ClassCompiler,
): CompiledPart {
  const steps = stepsOf(part, lab.machines);
  const print = typicalPrintOf(part, lab);
  return {
    index,
    name: part.name,
    space: part.space,
    boxVolume: boxVolumeOf(part),
    print:
      part.print === null || part.print.kind === 'shape'
        ? null
        : {
            perBuild: createSampler(part.print.perBuild.distribution),
            perPart: createSampler(part.print.perPart.distribution),
            typicalPerBuild: toMilliseconds(part.print.perBuild.typicalHours),
            typicalPerPart: toMilliseconds(part.print.perPart.typicalHours),
          },
    steps,
    outsideStep: steps.findIndex((step) => step.phase === 'outside'),
    stages: part.stages.map((stage, stageIndex): CompiledStage => {
      const timed = jobDurationOf(stage);
      return {
        kind: stage.kind === 'work' ? 'work' : stage.kind === 'wait' ? 'wait' : 'unit',
        name: stage.name,
        firstStep: steps.findIndex((step) => step.stageIndex === stageIndex),
        stepCount: steps.filter((step) => step.stageIndex === stageIndex).length,
        atBuildLevel: stage.level === 'build',
        maximumWait:
          stage.maximumWaitHours === null ? Number.POSITIVE_INFINITY : toMilliseconds(stage.maximumWaitHours),
        rejectShare: stage.rejects?.share ?? 0,
        rejectStage: rejectStageOf(stage, stageIndex, part),
        isForRequester: stage.kind === 'wait' && stage.requesterChance !== null,
        requesterChance: stage.kind === 'wait' ? (stage.requesterChance ?? 1) : 1,
        gathersJob: stage.move === 'per job',
        emptiesCarrier: stage.emptiesCarrier || endsCarrier(part, stage, stageIndex),
        work: stage.kind === 'work' ? attendance.work(stage.work, stage.name) : null,
        unitClass:
          stage.kind === 'build'
            ? classes.buildClass(part, stage, part.stages.slice(stageIndex + 1))
            : stage.kind === 'station'
              ? classes.stationClass(stage)
              : -1,
        basis: timed === null ? 'none' : timed.basis,
        sampler: timed === null ? null : createSampler(timed.distribution),
        constant: timed === null || timed.distribution.kind === 'constant',
        typical: toMilliseconds(typicalHoursOf(stage, print, lab)),
        typicalPerPiece: toMilliseconds(typicalHoursPerPieceOf(stage, print)),
      };
    }),
  };
}

function boxVolumeOf(part: PartType): number {
  if (part.print?.kind !== 'shape') return 0;
  const { width, depth, height } = part.print.shape;
  return width * depth * height;
}

/** A carrier that no stage of level `build` behind a build empties is free when the build stage ends. */
function endsCarrier(part: PartType, stage: Stage, stageIndex: number): boolean {
  if (stage.kind !== 'build') return false;
  return !tailOf(part.stages.slice(stageIndex + 1)).some((following) => following.emptiesCarrier);
}

/** Where rejected pieces start again; -1 when nothing is rejected. */
function rejectStageOf(stage: Stage, stageIndex: number, part: PartType): number {
  if (stage.rejects === null) return -1;
  const { backTo } = stage.rejects;
  const index = part.stages.findIndex((candidate) => candidate.name === backTo);
  if (index < 0 || index > stageIndex) {
    throw new Error(
      `"${stage.name}" of "${part.name}" sends rejects back to "${backTo}", which is not before it.`,
    );
  }
  return index;
}

/** The duration that is drawn for a job at its arrival; null when there is none. */
function jobDurationOf(stage: Stage) {
  const drawnForJob = (basis: DurationBasis): basis is 'job' | 'part' => basis === 'job' || basis === 'part';
  if (stage.kind === 'work' && drawnForJob(stage.basis)) {
    return { basis: stage.basis, distribution: stage.work.duration.distribution };
  }
  if (stage.kind === 'station' && drawnForJob(stage.basis)) {
    return { basis: stage.basis, distribution: stage.run.distribution };
  }
  if (stage.kind === 'wait' && stage.level === 'job') {
    return { basis: 'job' as const, distribution: stage.duration.distribution };
  }
  return null;
}

/** Hours that a stage typically takes for a single piece, without any waiting. */
function typicalHoursOf(stage: Stage, print: TypicalPrint, lab: Lab): number {
  switch (stage.kind) {
    case 'work':
      return stage.work.duration.typicalHours;
    case 'wait':
      return stage.duration.typicalHours;
    case 'station':
      return (
        (stage.load?.duration.typicalHours ?? 0) +
        stage.run.typicalHours +
        (stage.unload?.duration.typicalHours ?? 0)
      );
    case 'build': {
      const machine = lab.machines.find((group) => group.name === stage.machineGroup);
      return (
        (machine?.prepare?.duration.typicalHours ?? 0) +
        (machine?.setUp?.duration.typicalHours ?? 0) +
        (machine?.warmUp?.typicalHours ?? 0) +
        print.first +
        (machine?.coolDown?.duration.typicalHours ?? 0) +
        print.coolDown +
        (machine?.unload?.duration.typicalHours ?? 0)
      );
    }
  }
}

/** Hours that each further piece typically adds to a stage. */
function typicalHoursPerPieceOf(stage: Stage, print: TypicalPrint): number {
  switch (stage.kind) {
    case 'work':
      return stage.basis === 'part' ? stage.work.duration.typicalHours : 0;
    case 'station':
      return stage.basis === 'part' ? stage.run.typicalHours : 0;
    case 'build':
      return print.further;
    case 'wait':
      return 0;
  }
}
