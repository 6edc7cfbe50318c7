import { HOURS_PER_WEEK } from '@buildweek/core';
import type { MachineGroup } from '@buildweek/model';
import { waitToBatch } from '../formulas/batching.ts';
import { variabilityOf } from '../formulas/process-time.ts';
import type { BuildFlow, BuildsAtFill } from './build-flow.ts';
import { buildsAtFill } from './build-flow.ts';
import { chooseFullness } from './fill-choice.ts';
import type { StreamFlow } from './stream-flow.ts';
import { type Capacity, type Queue, queueOf } from './visits.ts';

/** What builds of a stream are like, and what a job goes through for one. */
export interface JobBuild extends BuildsAtFill {
  readonly flow: StreamFlow;
  /** Mean hours until the build is complete. */
  readonly batchHours: number;
  readonly arrivalVariability: number;
}

/** The queue before a group of machines. */
export interface MachineQueue extends Queue {
  readonly group: MachineGroup;
  readonly builds: readonly JobBuild[];
}

/** @param leastFullness take builds to be no less full than this; see {@link chooseFullness} */
export function machineQueue(
  group: MachineGroup,
  flows: readonly BuildFlow[],
  capacity: Capacity,
  leastFullness: number,
): MachineQueue {
  const own = flows.filter(({ builds }) => builds.group === group);
  const at = (fullness: number): MachineQueue => {
    const builds = own.map((flow) => jobBuild(flow, fullness));
    const queue = queueOf(
      builds.map(({ perWeek, effective, arrivalVariability }) => ({
        perWeek,
        time: effective,
        arrivalVariability,
      })),
      capacity,
    );
    return { ...queue, group, builds };
  };
  if (own.every(({ leastFill }) => leastFill === 1)) return at(1);
  return at(
    chooseFullness(leastFullness, (fullness) => {
      const { waitHours, builds } = at(fullness);
      return builds.reduce(
        (sum, { flow, batchHours, effective }) =>
          sum + flow.demand.jobsPerWeek * (batchHours + waitHours + effective.mean),
        0,
      );
    }),
  );
}

function jobBuild(flow: BuildFlow, fullness: number): JobBuild {
  const builds = buildsAtFill(flow, fullness);
  const { jobsPerBuild } = builds;
  const { pieces, arrivalVariability } = flow.flow;
  const buildsPerJob = 1 / jobsPerBuild;
  return {
    ...builds,
    flow: flow.flow,
    batchHours: jobsPerBuild > 1 ? waitToBatch(jobsPerBuild, flow.jobsTogether / HOURS_PER_WEEK) : 0,
    // k jobs to a build make its arrivals k times as even (Hopp and Spearman, chapter 9); several builds of one job come at once.
    arrivalVariability:
      arrivalVariability * buildsPerJob + (buildsPerJob > 1 ? buildsPerJob * variabilityOf(pieces) : 0),
  };
}
