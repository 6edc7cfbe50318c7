import type { History } from '@buildweek/core';
import type { Economics, Lab, MachineGroup, PartType } from '@buildweek/model';
import { materialVolume, powderOfBuild } from '@buildweek/timing';
import { buildVolumes } from '../reduce/build-volumes.ts';

const CUBIC_MILLIMETRES_PER_CUBIC_CENTIMETRE = 1000;
const GRAMS_PER_KILOGRAM = 1000;

/**
 * What the material of one piece of a part type costs, in a build that is as full as those of the period were.
 *
 * Stated, or from the shape: grams that stay in the piece and its supports, the waste, the price. Of powder it is what
 * has to be bought for the build: the virgin share of all that fills the bed, at least what stays in the parts. Used
 * powder costs nothing, and a surplus of it is worth nothing.
 * @throws Error when neither is known; `scenario` has made sure that one is
 */
export function materialPerPiece(lab: Lab, economics: Economics, part: PartType, history: History): number {
  const stated = economics.parts.find((cost) => cost.part === part.name)?.material ?? null;
  if (stated !== null) return stated;
  const group = machineOf(lab, part);
  const price = economics.materials.find((cost) => cost.material === part.material);
  if (group?.shaped == null || part.print?.kind !== 'shape' || price === undefined) {
    throw new Error(`What the material of one "${part.name}" costs is not known.`);
  }
  const volume = materialVolume(group.process, group.shaped.time, part.print.shape);
  const density = boughtPerVolume(group, history) ?? price.density;
  if (density === null) throw new Error(`The density of "${part.material}" is not known.`);
  const grams = (volume / CUBIC_MILLIMETRES_PER_CUBIC_CENTIMETRE) * density;
  return (grams / GRAMS_PER_KILOGRAM) * (1 + price.waste) * price.pricePerKilogram;
}

/** Grams of powder that are bought for each cm3 of part; null on machines without powder. */
function boughtPerVolume(group: MachineGroup, history: History): number | null {
  const powder = group.shaped?.powder ?? null;
  if (group.shaped === null || powder === null) return null;
  const { cakeVolume, partVolume } = buildVolumes(history, group.name, group.shaped);
  if (partVolume === 0) return powder.partDensity;
  const { virginGrams, inPartsGrams } = powderOfBuild(powder, cakeVolume, partVolume);
  return (Math.max(virginGrams, inPartsGrams) / partVolume) * CUBIC_MILLIMETRES_PER_CUBIC_CENTIMETRE;
}

function machineOf(lab: Lab, part: PartType): MachineGroup | undefined {
  const stage = part.stages.find((candidate) => candidate.kind === 'build');
  return stage?.kind === 'build'
    ? lab.machines.find((group) => group.name === stage.machineGroup)
    : undefined;
}
