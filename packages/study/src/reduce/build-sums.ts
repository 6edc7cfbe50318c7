import { type History, MILLISECONDS_PER_WEEK } from '@buildweek/core';
import type { Lab, MachineGroup, ShapedBuilds } from '@buildweek/model';
import type { Builds } from '@buildweek/results';
import { RunningMeans, RunningRatios } from '@buildweek/statistics';
import { powderOfBuild } from '@buildweek/timing';
import { buildVolumes } from './build-volumes.ts';
import { meanEstimate, ratioOrRefused, signedEstimate } from './estimates.ts';

const NEVER_RAN = 'It never ran.';
const GRAMS_PER_KILOGRAM = 1000;

/** Sums over the builds of the machine groups that pack and time by the shapes of their parts. */
export class BuildSums {
  private readonly groups: readonly GroupSums[];

  constructor(lab: Lab) {
    this.groups = lab.machines.flatMap((group) =>
      group.shaped === null || !buildsShapes(lab, group) ? [] : [new GroupSums(group.name, group.shaped)],
    );
  }

  add(history: History): void {
    for (const group of this.groups) group.add(history);
  }

  /** @throws RangeError for fewer than 20 replications */
  results(level: number): Builds[] {
    return this.groups.map((group) => group.results(level));
  }
}

/** Whether any part with a shape is built on a group; typed parts leave nothing to sum up. */
function buildsShapes(lab: Lab, group: MachineGroup): boolean {
  return lab.parts.some(
    (part) =>
      part.print?.kind === 'shape' &&
      part.stages.some((stage) => stage.kind === 'build' && stage.machineGroup === group.name),
  );
}

class GroupSums {
  private readonly name: string;
  private readonly shaped: ShapedBuilds;
  /** Pieces, fill and height of a build, over builds. */
  private readonly perBuild = new RunningRatios(3);
  private readonly density = new RunningRatios(1);
  /** Virgin, used, returned, in parts, surplus; kg a week. */
  private readonly powder = new RunningMeans(5);

  constructor(name: string, shaped: ShapedBuilds) {
    this.name = name;
    this.shaped = shaped;
  }

  add(history: History): void {
    const { powder } = this.shaped;
    const { builds, pieces, fillSum, heightSum, cakeVolume, partVolume } = buildVolumes(
      history,
      this.name,
      this.shaped,
    );
    this.perBuild.add([pieces, fillSum, heightSum], builds);
    this.density.add([partVolume], cakeVolume);
    if (powder === null) return;
    const perWeek = (history.windowEnd - history.windowStart) / MILLISECONDS_PER_WEEK;
    // Masses are proportional to volumes, so the builds of a replication can be taken as one.
    const { virginGrams, usedGrams, returnedGrams, inPartsGrams } = powderOfBuild(
      powder,
      cakeVolume,
      partVolume,
    );
    this.powder.add(
      [virginGrams, usedGrams, returnedGrams, inPartsGrams, returnedGrams - usedGrams].map(
        (grams) => grams / GRAMS_PER_KILOGRAM / perWeek,
      ),
    );
  }

  results(level: number): Builds {
    const { space, powder } = this.shaped;
    const kilograms = (figure: number) => meanEstimate(this.powder, figure, level);
    return {
      group: this.name,
      kind: space.kind,
      mostHeight: space.height,
      partsPerBuild: ratioOrRefused(this.perBuild, 0, level, NEVER_RAN),
      meanFill: ratioOrRefused(this.perBuild, 1, level, NEVER_RAN, 1),
      meanHeight: ratioOrRefused(this.perBuild, 2, level, NEVER_RAN, space.height),
      packingDensity:
        space.kind === 'powder bed'
          ? ratioOrRefused(this.density, 0, level, NEVER_RAN, 1)
          : { kind: 'refused', reason: 'There is no powder around the parts.' },
      powder:
        powder === null
          ? null
          : {
              virgin: kilograms(0),
              used: kilograms(1),
              returned: kilograms(2),
              inParts: kilograms(3),
              surplus: signedEstimate(this.powder, 4, level),
            },
    };
  }
}
