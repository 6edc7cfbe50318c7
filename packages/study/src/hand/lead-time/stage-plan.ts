import type { AttendedWork, Stage, WaitStage, WorkStage } from '@buildweek/model';
import type { Moments } from '../formulas/process-time.ts';
import type { StationQueue } from './batch-queue.ts';
import type { JobBuild, MachineQueue } from './machine-queue.ts';
import type { StreamFlow } from './stream-flow.ts';
import { momentsOf } from './trouble.ts';

/** Work of people that comes up in a stage; whoever does it is waited for once. */
export interface Task {
  readonly skill: string;
  readonly persons: number;
  readonly perWeek: number;
  readonly time: Moments;
  /** How many of them come up at one moment, because their jobs were built together. */
  readonly atOnce: number;
}

/** What a job goes through in one stage, each time that it passes. */
export interface StagePlan {
  readonly flow: StreamFlow;
  readonly passes: number;
  /** Hours in which the stage goes on, without trouble. */
  readonly stageHours: number;
  /** Further hours for breakdowns and builds in vain. */
  readonly troubleHours: number;
  /** Hours of waiting for an answer of the requester. */
  readonly requesterHours: number;
  readonly batchHours: number;
  /** Hours of waiting for a machine or station. */
  readonly equipmentHours: number;
  /** Name and utilization of what is waited for; null where no equipment is. */
  readonly equipment: { readonly name: string; readonly utilization: number } | null;
  readonly tasks: readonly Task[];
}

/** The stages of a stream with what each asks for, in the order of its route. */
export function stagePlans(
  flow: StreamFlow,
  machines: readonly MachineQueue[],
  stations: readonly StationQueue[],
): StagePlan[] {
  const build = machines.flatMap(({ builds }) => builds).find((one) => one.flow === flow) ?? null;
  let atOnce = 1;
  return flow.part.stages.map((stage, position) => {
    const context: Context = { flow, build, atOnce, passes: flow.passes[position] ?? 1, position };
    // Behind a build its jobs come at once; the first stage that takes them one by one spreads them out.
    if (stage.kind === 'build') atOnce = Math.max(1, build?.jobsPerBuild ?? 1);
    else if (stage.level === 'job' && stage.kind !== 'wait') atOnce = 1;
    return planOf(stage, context, machines, stations);
  });
}

function planOf(
  stage: Stage,
  context: Context,
  machines: readonly MachineQueue[],
  stations: readonly StationQueue[],
): StagePlan {
  switch (stage.kind) {
    case 'work':
      return workPlan(stage, context);
    case 'wait':
      return waitPlan(stage, context);
    case 'build':
      return buildPlan(context, machines);
    case 'station':
      return stationPlan(stage, context, stations);
  }
}

function waitPlan({ duration, requesterChance }: WaitStage, context: Context): StagePlan {
  const { mean } = momentsOf(duration.distribution);
  return requesterChance === null
    ? { ...nothing(context), stageHours: mean }
    : { ...nothing(context), requesterHours: mean * requesterChance };
}

interface Context {
  readonly flow: StreamFlow;
  readonly build: JobBuild | null;
  readonly atOnce: number;
  readonly passes: number;
  readonly position: number;
}

function nothing({ flow, passes }: Context): StagePlan {
  return {
    flow,
    passes,
    stageHours: 0,
    troubleHours: 0,
    requesterHours: 0,
    batchHours: 0,
    equipmentHours: 0,
    equipment: null,
    tasks: [],
  };
}

/** What goes through a stage of people together. */
interface Loads {
  readonly perWeek: number;
  readonly jobs: number;
  readonly pieces: Moments;
}

function loadsOf(stage: Stage, { flow, build, passes, position }: Context): Loads {
  if (stage.level === 'build' && build !== null) {
    const { jobsPerBuild, piecesPerBuild } = build;
    return {
      perWeek: build.perWeek,
      jobs: Math.max(1, jobsPerBuild),
      pieces: { mean: piecesPerBuild, variance: Math.max(1, jobsPerBuild) * flow.pieces.variance },
    };
  }
  const visits = flow.pieceVisits[position] ?? 1;
  return {
    perWeek: flow.demand.jobsPerWeek * passes,
    jobs: 1,
    pieces: { mean: (flow.pieces.mean * visits) / passes, variance: flow.pieces.variance },
  };
}

function workPlan(stage: WorkStage, context: Context): StagePlan {
  const loads = loadsOf(stage, context);
  const draw = momentsOf(stage.work.duration.distribution);
  const time =
    stage.basis === 'part'
      ? {
          mean: draw.mean * loads.pieces.mean,
          variance: draw.variance * loads.pieces.mean + draw.mean ** 2 * loads.pieces.variance,
        }
      : times(draw, stage.basis === 'job' ? loads.jobs : 1);
  const atOnce = stage.level === 'build' ? 1 : context.atOnce;
  const { skill, persons } = stage.work;
  return {
    ...nothing(context),
    stageHours: time.mean,
    tasks: [{ skill, persons, perWeek: loads.perWeek, time, atOnce }],
  };
}

function times({ mean, variance }: Moments, count: number): Moments {
  return { mean: mean * count, variance: variance * count };
}

function buildPlan(context: Context, machines: readonly MachineQueue[]): StagePlan {
  const { build } = context;
  const queue = machines.find(({ builds }) => build !== null && builds.includes(build));
  if (build === null || queue === undefined) return nothing(context);
  const { group } = queue;
  const starts = build.perWeek * build.startsPerGoodBuild;
  const task = (work: AttendedWork | null): Task[] => taskOf(work, starts, 1);
  // A job that needs more builds than there are machines has them built one after the other.
  const rounds = Math.max(1, 1 / build.jobsPerBuild / group.count);
  return {
    ...nothing(context),
    passes: context.passes * build.triesPerJob,
    stageHours: (rounds * build.natural.mean) / build.triesPerJob + build.coolingOutside,
    troubleHours: (rounds * (build.effective.mean - build.natural.mean)) / build.triesPerJob,
    batchHours: build.batchHours,
    equipmentHours: queue.waitHours,
    equipment: { name: group.name, utilization: queue.utilization },
    tasks: [group.prepare, group.setUp, group.firstLayers, group.unload].flatMap(task),
  };
}

function stationPlan(
  stage: Extract<Stage, { kind: 'station' }>,
  context: Context,
  stations: readonly StationQueue[],
): StagePlan {
  const { flow, passes } = context;
  const queue = stations.find(({ group }) => group.name === stage.stationGroup);
  const batch = queue?.batches.find((one) => one.flow === flow && one.batches.stage === stage);
  if (queue === undefined || batch === undefined) return nothing(context);
  const { group, utilization, waitHours } = queue;
  const rounds = Math.max(1, 1 / batch.loadsPerBatch / group.count);
  const arrivingBatches = stage.level === 'build' ? 1 : context.atOnce / Math.max(1, batch.loadsPerBatch);
  const { runAttendance } = stage;
  return {
    ...nothing(context),
    stageHours: rounds * batch.natural.mean,
    troubleHours: rounds * (batch.effective.mean - batch.natural.mean),
    batchHours: batch.batchHours,
    equipmentHours: waitHours + waitForMates(arrivingBatches, group.count, batch.effective.mean),
    equipment: { name: group.name, utilization },
    passes,
    tasks: [
      ...taskOf(stage.load, batch.perWeek, 1),
      ...(runAttendance === null
        ? []
        : [
            {
              skill: runAttendance.skill,
              persons: runAttendance.persons,
              perWeek: batch.perWeek,
              time: { mean: batch.batches.runHours, variance: 0 },
              atOnce: 1,
            },
          ]),
      ...taskOf(stage.unload, batch.perWeek, 1),
    ],
  };
}

function taskOf(work: AttendedWork | null, perWeek: number, atOnce: number): Task[] {
  if (work === null) return [];
  const { skill, persons } = work;
  return [{ skill, persons, perWeek, time: momentsOf(work.duration.distribution), atOnce }];
}

/** Mean hours that one of several that come at once waits for the others: half of them, shared by the servers. */
export function waitForMates(atOnce: number, servers: number, hours: number): number {
  return (Math.max(0, atOnce / servers - 1) / 2) * hours;
}
