import { meanOf, meanOfCount } from '@buildweek/core';
import type { Lab, PartType, StationGroup, StationStage } from '@buildweek/model';
import type { ExpectedBuilds } from './expected-builds.ts';
import { partOf } from './expected-builds.ts';
import type { ExpectedDemand } from './expected-demand.ts';

/** Batches that one stage asks of a station group, full batches counted. */
export interface ExpectedBatches {
  readonly demand: ExpectedDemand;
  readonly stage: StationStage;
  readonly group: StationGroup;
  readonly batchesPerWeek: number;
  /** What goes in in one piece, a job or a whole build, and the mean number of pieces in it. */
  readonly loadsPerWeek: number;
  readonly piecesPerLoad: number;
  /** Hours of one run. */
  readonly runHours: number;
  /** Hours of a station for each batch: load, run and unload. */
  readonly hoursPerBatch: number;
}

/** The fewest batches that can treat the demand. */
export function expectedBatches(
  lab: Lab,
  demands: readonly ExpectedDemand[],
  builds: readonly ExpectedBuilds[],
): ExpectedBatches[] {
  return demands.flatMap((demand) => {
    const build = builds.find((candidate) => candidate.demand === demand);
    return partOf(lab, demand).stages.flatMap((stage) => {
      if (stage.kind !== 'station') return [];
      const group = lab.stations.find((candidate) => candidate.name === stage.stationGroup);
      if (group === undefined) throw new Error(`The lab has no station group "${stage.stationGroup}".`);
      const loads = loadsOf(demand, stage, build);
      const batchesPerWeek = loads.perWeek * shareOfBatch(loads, group, lab);
      const loadsPerBatch = batchesPerWeek === 0 ? 0 : loads.perWeek / batchesPerWeek;
      const draw = meanOf(stage.run.distribution);
      // A batch takes as long as its longest load: at least as long as the mean of one, or of what it holds of it.
      const pieces = Math.min(loads.pieces, loadsPerBatch * loads.pieces);
      const runHours = stage.basis === 'part' ? draw * pieces : draw;
      const handling =
        (stage.load === null ? 0 : meanOf(stage.load.duration.distribution)) +
        (stage.unload === null ? 0 : meanOf(stage.unload.duration.distribution));
      return loadsPerBatch === 0
        ? []
        : [
            {
              demand,
              stage,
              group,
              batchesPerWeek,
              loadsPerWeek: loads.perWeek,
              piecesPerLoad: loads.pieces,
              runHours,
              hoursPerBatch: handling + runHours,
            },
          ];
    });
  });
}

/** What goes into a station in one piece: a job, or a whole build. */
interface ExpectedLoads {
  readonly perWeek: number;
  /** Mean number of pieces and of jobs in one. */
  readonly pieces: number;
  readonly jobs: number;
  readonly demand: ExpectedDemand;
  readonly isBuild: boolean;
}

function loadsOf(
  demand: ExpectedDemand,
  stage: StationStage,
  build: ExpectedBuilds | undefined,
): ExpectedLoads {
  if (stage.level === 'build' && build !== undefined && build.buildsPerWeek > 0) {
    return {
      perWeek: build.buildsPerWeek,
      pieces: demand.piecesPerWeek / build.buildsPerWeek,
      jobs: demand.jobsPerWeek / build.buildsPerWeek,
      demand,
      isBuild: true,
    };
  }
  return {
    perWeek: demand.jobsPerWeek,
    pieces: meanOfCount(demand.quantity),
    jobs: 1,
    demand,
    isBuild: false,
  };
}

/** mm3 of the bounding box; a part without a shape takes no space, as in the simulation. */
function boxVolumeOf(part: PartType): number {
  if (part.print?.kind !== 'shape') return 0;
  const { width, depth, height } = part.print.shape;
  return width * depth * height;
}

function shareOfBatch(loads: ExpectedLoads, group: StationGroup, lab: Lab): number {
  switch (group.unit) {
    case 'builds':
      return Math.min(1, 1 / group.capacity);
    case 'jobs':
      return Math.min(1, loads.jobs / group.capacity);
    case 'box volume': {
      const inParts = group.capacity / boxVolumeOf(partOf(lab, loads.demand));
      return partsShare(loads, inParts);
    }
    case 'parts':
      return partsShare(loads, group.capacity);
  }
}

/** Batches that the parts of a load take: a whole build is never split, a job over as many as it needs. */
function partsShare({ isBuild, pieces }: ExpectedLoads, capacity: number): number {
  return isBuild ? Math.min(1, pieces / capacity) : pieces / capacity;
}
