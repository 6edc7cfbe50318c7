import type { InitialJob, InitialMachine, Lab } from '@buildweek/model';
import { toMilliseconds } from '../kernel/clock.ts';
import { createStream } from '../kernel/streams.ts';
import type { Job } from './job.ts';
import type { Load } from './load.ts';
import type { Simulation } from './simulation.ts';

/**
 * Puts the lab into the state in which it stands when the plan starts.
 *
 * @throws Error when a name does not resolve; `scenario` has checked that it does
 */
export function enterInitialState(simulation: Simulation, lab: Lab): void {
  const { jobs, machines } = lab.initialState;
  const built = new Set(machines.flatMap((machine) => machine.jobs));
  const entered = jobs.map((initial) => enterJob(simulation, initial));
  jobs.forEach((initial, position) => {
    if (!built.has(position)) placeJob(simulation, entered[position], initial);
  });
  for (const machine of machines) {
    holdMachine(
      simulation,
      machine,
      machine.jobs.map((position) => entered[position]),
    );
  }
}

function enterJob(simulation: Simulation, initial: InitialJob): Job {
  const { compiled, localTime, jobs, demand } = simulation;
  const stream = compiled.streams.find((candidate) => candidate.stream.name === initial.stream);
  if (stream === undefined) throw new Error(`The initial state names no demand "${initial.stream}".`);
  const dueAt =
    initial.dueAtHour === null
      ? Number.POSITIVE_INFINITY
      : localTime.toElapsed(toMilliseconds(initial.dueAtHour));
  const job = jobs.enter(
    stream,
    initial.quantity,
    initial.rush,
    initial.arrivedAtHour > 0
      ? localTime.toElapsed(toMilliseconds(initial.arrivedAtHour))
      : toMilliseconds(initial.arrivedAtHour),
    dueAt,
  );
  demand.drawWork(job);
  return job;
}

function stageOf(job: Job, name: string): number {
  const stage = job.part.stages.findIndex((candidate) => candidate.name === name);
  if (stage < 0) throw new Error(`The route of "${job.part.name}" has no stage "${name}".`);
  return stage;
}

/** Lets a job wait for its stage, or go on with what remains of it. */
function placeJob(simulation: Simulation, job: Job, initial: InitialJob): void {
  const stage = stageOf(job, initial.stage);
  const load = simulation.loads.begin(job, stage);
  if (job.part.stages[stage].atBuildLevel && !isBuilt(simulation, job, stage)) {
    makeBuild(simulation, job, stage, load);
  }
  if (initial.remainingHours !== null) {
    const remaining = toMilliseconds(initial.remainingHours);
    job.stageWork[stage] = remaining;
    load.tailWork[load.tailOffset] = remaining;
  }
  simulation.flow.enterStage(load, initial.remainingHours !== null);
}

/** Whether a stage is the build itself, on machines; what goes through it whole comes behind it. */
function isBuilt({ compiled }: Simulation, job: Job, stage: number): boolean {
  const { kind, unitClass } = job.part.stages[stage];
  return kind === 'unit' && compiled.unitGroups[compiled.unitClasses[unitClass].group].kind === 'machine';
}

/** A job at a stage of level `build` is a build of its own, whose durations are drawn as if it had been built. */
function makeBuild(simulation: Simulation, job: Job, stage: number, load: Load): void {
  const { compiled, settings } = simulation;
  const { stages } = job.part;
  let builtAt = stage;
  while (!isBuilt(simulation, job, builtAt)) builtAt--;
  load.isBuild = true;
  load.tailOffset = stage - builtAt;
  compiled.unitClasses[stages[builtAt].unitClass].tailWork.forEach((work, offset) => {
    const owner = `${compiled.streams[job.stream].stream.name} ${job.number} ${stages[builtAt + offset + 1].name}`;
    const uniform = createStream(settings.seed, settings.replication, 'work of an initial build', owner)();
    load.tailWork[offset + 1] = work === null ? 0 : toMilliseconds(work.sampler.sample(uniform));
  });
}

/** Puts jobs into a machine that runs until a stated time and then waits to be unloaded. */
function holdMachine(simulation: Simulation, initial: InitialMachine, jobs: readonly Job[]): void {
  const { units, compiled, loads } = simulation;
  const unit = units.units.find((candidate) => candidate.name === initial.machine);
  if (unit === undefined) throw new Error(`The initial state names no machine "${initial.machine}".`);
  const group = units.groups[unit.group];
  const build = loads.emptyLoad();
  build.isBuild = true;
  build.kind = group.compiled.kindRank;
  for (const job of jobs) {
    const position = job.part.stages.findIndex(
      (stage) => stage.kind === 'unit' && compiled.unitClasses[stage.unitClass].group === unit.group,
    );
    if (position < 0) throw new Error(`"${job.part.name}" is not built on "${initial.machine}".`);
    loads.addLot(build, loads.createLot(job, job.quantity, position));
  }
  const [first] = jobs;
  const stage = first?.part.stages.find(
    (candidate) =>
      candidate.kind === 'unit' && compiled.unitClasses[candidate.unitClass].group === unit.group,
  );
  const unitClass = stage === undefined ? group.classes[0]?.compiled : compiled.unitClasses[stage.unitClass];
  if (unitClass === undefined) throw new Error(`Nothing is ever built on "${initial.machine}".`);
  // What should be done already waits to be unloaded from the start.
  const end = Math.max(
    simulation.startAt,
    simulation.localTime.toElapsed(toMilliseconds(initial.busyUntilHour)),
  );
  units.hold(unit, unitClass, build, initial.material, end);
}
