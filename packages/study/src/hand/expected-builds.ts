import { meanOf } from '@buildweek/core';
import type { BuildStage, Lab, MachineGroup, PartType, Stage } from '@buildweek/model';
import type { ExpectedDemand } from './expected-demand.ts';
import { expectedPrint } from './expected-print.ts';
import { expectedVisits } from './expected-visits.ts';

/** Builds that the pieces of one demand stream fill, full builds counted, and what one of them holds. */
export interface ExpectedBuilds {
  readonly demand: ExpectedDemand;
  readonly part: PartType;
  readonly stage: BuildStage;
  readonly group: MachineGroup;
  /** Machine loads of this stream alone, had every build no room left. */
  readonly buildsPerWeek: number;
  /** Hours of a machine for each of these builds, from its first phase until it is free. */
  readonly hoursPerBuild: number;
}

/**
 * The fewest builds that can print the demand. Parts that share a build (same material, settings, machine group and
 * following stages of level `build`) fill it to the last place where they differ in size, and in whole pieces where
 * they do not.
 */
export function expectedBuilds(lab: Lab, demands: readonly ExpectedDemand[]): ExpectedBuilds[] {
  const found = demands.flatMap((demand) => {
    const part = partOf(lab, demand);
    const position = part.stages.findIndex((candidate) => candidate.kind === 'build');
    const stage = part.stages[position];
    if (stage?.kind !== 'build') return [];
    const group = lab.machines.find((candidate) => candidate.name === stage.machineGroup);
    if (group === undefined) throw new Error(`The lab has no machine group "${stage.machineGroup}".`);
    const piecesPerWeek = demand.piecesPerWeek * (expectedVisits(part)[position] ?? 1);
    return [{ demand, part, stage, group, piecesPerWeek }];
  });
  const bySpace = found.map(({ part, group, piecesPerWeek }) => {
    const together = found.filter((other) => sharesBuilds(part, other.part));
    const alike = together.every((other) => other.part.space === part.space);
    const room = group.capacity / part.space;
    return piecesPerWeek / (alike ? Math.max(1, Math.floor(room + 1e-9)) : room);
  });
  return found.map(({ demand, part, stage, group, piecesPerWeek }, index) => {
    const spaceNeeds = sumOver(
      found,
      (other) => sharesBuilds(part, other.part),
      (_, at) => bySpace[at] ?? 0,
    );
    // Every job is in one build at least, so a limit of jobs in a build asks for so many.
    const jobsNeed =
      group.mostJobs === null
        ? 0
        : sumOver(
            found,
            (other) => sharesBuilds(part, other.part),
            (other) => other.demand.jobsPerWeek / (group.mostJobs ?? 1),
          );
    const buildsPerWeek = (bySpace[index] ?? 0) * (spaceNeeds === 0 ? 1 : Math.max(1, jobsNeed / spaceNeeds));
    const piecesPerBuild = buildsPerWeek === 0 ? 0 : piecesPerWeek / buildsPerWeek;
    return {
      demand,
      part,
      stage,
      group,
      buildsPerWeek,
      hoursPerBuild: hoursOfBuild(part, group, piecesPerBuild),
    };
  });
}

function sumOver<T>(
  list: readonly T[],
  isMeant: (one: T) => boolean,
  value: (one: T, index: number) => number,
): number {
  return list.reduce((sum, one, index) => (isMeant(one) ? sum + value(one, index) : sum), 0);
}

/** @throws Error when the lab does not know the part of a stream */
export function partOf(lab: Lab, demand: ExpectedDemand): PartType {
  const part = lab.parts.find((candidate) => candidate.name === demand.stream.part);
  if (part === undefined) throw new Error(`The lab has no part "${demand.stream.part}".`);
  return part;
}

/** Whether pieces of two part types may be in one build. */
export function sharesBuilds(one: PartType, other: PartType): boolean {
  if (one.material !== other.material || one.settings !== other.settings) return false;
  return JSON.stringify(stagesOfBuild(one)) === JSON.stringify(stagesOfBuild(other));
}

/** The build stage and the stages of level `build` behind it. */
function stagesOfBuild(part: PartType): Stage[] {
  const start = part.stages.findIndex((stage) => stage.kind === 'build');
  const after = part.stages.slice(start + 1);
  const end = after.findIndex((stage) => stage.level !== 'build');
  return part.stages.slice(start, end < 0 ? undefined : start + 1 + end);
}

function hoursOfBuild(part: PartType, group: MachineGroup, pieces: number): number {
  const { hours: printing, furtherCoolDown } = expectedPrint(part, group, pieces);
  const mean = (
    work: { readonly duration: { readonly distribution: Parameters<typeof meanOf>[0] } } | null,
  ): number => (work === null ? 0 : meanOf(work.duration.distribution));
  return (
    mean(group.prepare) +
    mean(group.setUp) +
    (group.warmUp === null ? 0 : meanOf(group.warmUp.distribution)) +
    printing +
    (group.coolDown?.where === 'machine'
      ? meanOf(group.coolDown.duration.distribution) + furtherCoolDown
      : 0) +
    mean(group.unload)
  );
}
