import type { Lab, PartType } from '@buildweek/model';
import type { CivilTime, LoggedJob, MachineRun } from '../logged-jobs.ts';

const HOUR = 3_600_000;
const MINUTE = 60_000;
const HOURS_PER_DAY = 24;
const DAY = HOURS_PER_DAY * HOUR;
/** What fits exactly must not fail by rounding. */
const ROUNDING = 1e-9;

/** A job that stands in the lab, in the words of a scenario. */
export interface OpenJob {
  /** The number or name that the log gives it; null where it gives none, or gives it twice. */
  readonly name: string | null;
  readonly demand: string;
  readonly pieces: number;
  readonly stage: string;
  /** Machine that holds it; null: it waits. */
  readonly machine: string | null;
  readonly arrived: CivilTime;
  readonly due: CivilTime | null;
  readonly rush: boolean;
}

/** A machine with a build in it. */
export interface BusyMachine {
  readonly machine: string;
  readonly busyUntil: CivilTime;
}

/** What stands in the lab by its log, and what of it could not be told. */
export interface LabState {
  readonly jobs: readonly OpenJob[];
  readonly machines: readonly BusyMachine[];
  /** Whole sentences. */
  readonly told: readonly string[];
}

/**
 * The jobs that are open in a log, each at the stage that the log names, and the machines that are running.
 *
 * @param lab whose demands, stages and machines they have to find a place in
 * @param now moment at which the state holds: jobs that are asked for later are left out
 */
export function openJobs(
  jobs: readonly LoggedJob[],
  runs: readonly MachineRun[],
  lab: Lab,
  now: CivilTime,
): LabState {
  const open = jobs.filter(({ isOpen, cancelled, asked }) => isOpen && !cancelled && asked <= now);
  const unknown = new Map<string, number>();
  const guessed = { first: 0, stage: new Map<string, number>() };
  const busy = runningMachines(runs, lab, now);
  const room = new Map<string, number>();
  let tooLarge = 0;
  const names = new Map<string, number>();
  for (const { name } of open) if (name !== null) names.set(name, (names.get(name) ?? 0) + 1);
  const found = open.flatMap((job): OpenJob[] => {
    const stream =
      lab.demand.find(({ name }) => name === job.part) ?? lab.demand.find(({ part }) => part === job.part);
    const part = lab.parts.find(({ name }) => name === stream?.part);
    if (stream === undefined || part === undefined) {
      unknown.set(job.part, (unknown.get(job.part) ?? 0) + 1);
      return [];
    }
    const named = stageOf(job, part);
    if (named === 'none') guessed.first++;
    else if (typeof named === 'object') {
      guessed.stage.set(named.unknown, (guessed.stage.get(named.unknown) ?? 0) + 1);
    }
    const stage = typeof named === 'string' && named !== 'none' ? named : (part.stages[0]?.name ?? '');
    const pieces = job.quantity ?? 1;
    let machine = machineOf(job, stage, part, busy);
    if (machine !== null) {
      const left = (room.get(machine) ?? capacityOf(machine, lab)) - pieces * part.space;
      // The log does not say how many of its pieces are in this build.
      if (left < -ROUNDING) {
        machine = null;
        tooLarge++;
      } else room.set(machine, left);
    }
    return [
      {
        name: job.name !== null && names.get(job.name) === 1 ? job.name : null,
        demand: stream.name,
        pieces,
        stage,
        machine,
        arrived: job.asked,
        due: dueOf(job, lab),
        rush: job.rush === true,
      },
    ];
  });
  const held = new Set(found.flatMap(({ machine }) => (machine === null ? [] : [machine])));
  return {
    jobs: found,
    // What runs in a machine that no open job is in is no concern of the jobs, but the machine is taken.
    machines: [...busy].map(([machine, busyUntil]) => ({ machine, busyUntil })),
    told: sentences(found.length, held.size, tooLarge, unknown, guessed),
  };
}

/** How much fits in one build of a machine. */
function capacityOf(machine: string, lab: Lab): number {
  return lab.machines.find(({ name }) => name === machine.replace(/ \d+$/, ''))?.capacity ?? 0;
}

/** Machines that run now, with when they may be done: the median of what such runs took, or a moment from now. */
function runningMachines(runs: readonly MachineRun[], lab: Lab, now: CivilTime): Map<string, CivilTime> {
  const busy = new Map<string, CivilTime>();
  for (const { name, count } of lab.machines) {
    const own = Array.from({ length: count }, (_, index) => `${name} ${index + 1}`);
    const took = runs
      .filter(({ machine, outcome, end }) => own.includes(machine) && outcome === 'done' && end !== null)
      .map(({ start, end }) => (end ?? start) - start)
      .sort((a, b) => a - b);
    const median = took[Math.floor(took.length / 2)] ?? 0;
    for (const machine of own) {
      const running = runs.filter((run) => run.machine === machine && run.start <= now && run.end === null);
      const last = running.at(-1);
      if (last !== undefined) busy.set(machine, Math.max(now + MINUTE, last.start + median));
    }
  }
  return busy;
}

type Named = string | 'none' | { readonly unknown: string };

/** The stage of the route that the log means: by its name; printing is the build. */
function stageOf({ stage, stages }: LoggedJob, { stages: route }: PartType): Named {
  const started = stages.filter(({ start }) => start !== null).at(-1)?.name ?? null;
  const written = stage ?? started;
  if (written === null) return 'none';
  const wanted = plain(written);
  const same = route.find(({ name }) => plain(name) === wanted);
  if (same !== undefined) return same.name;
  const build = route.find(({ kind }) => kind === 'build');
  if (build !== undefined && /print|build|druck|machine/.test(wanted)) return build.name;
  const like = route.find(({ name }) => plain(name).includes(wanted) || wanted.includes(plain(name)));
  return like === undefined ? { unknown: written } : like.name;
}

function machineOf(
  { machine }: LoggedJob,
  stage: string,
  { stages }: PartType,
  busy: ReadonlyMap<string, CivilTime>,
): string | null {
  const isBuild = stages.some(({ name, kind }) => name === stage && kind === 'build');
  return isBuild && machine !== null && busy.has(machine) && builtOn(machine, stages) ? machine : null;
}

/** Whether a machine, such as "resin 2", is one of those on which a part is built. */
function builtOn(machine: string, stages: PartType['stages']): boolean {
  return stages.some(
    (stage) => stage.kind === 'build' && machine.replace(/ \d+$/, '') === stage.machineGroup,
  );
}

/** A promise that is a date alone is due when the lab closes on that day, like every promise in working days. */
function dueOf({ promised }: LoggedJob, lab: Lab): CivilTime | null {
  // The log takes a date alone as the end of its day.
  if (promised === null || promised % DAY < DAY - MINUTE) return promised;
  const calendar = lab.calendars.find(({ name }) => name === lab.labCalendar);
  const day = Math.floor(promised / DAY) * DAY;
  const midnight = weekdayOf(promised) * HOURS_PER_DAY;
  const closing = (calendar?.weekly ?? [])
    .map(({ toHour }) => toHour - midnight)
    .filter((hour) => hour > 0 && hour <= HOURS_PER_DAY)
    .reduce((latest, hour) => Math.max(latest, hour), 0);
  return closing === 0 ? promised : day + closing * HOUR;
}

/** From 0 for Monday; 1970-01-01 was a Thursday. */
function weekdayOf(time: CivilTime): number {
  return (Math.floor(time / DAY) + 3) % 7;
}

function plain(name: string): string {
  return name
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/g, ' ');
}

function sentences(
  jobs: number,
  machines: number,
  tooLarge: number,
  unknown: ReadonlyMap<string, number>,
  guessed: { readonly first: number; readonly stage: ReadonlyMap<string, number> },
): string[] {
  const counted = (count: number): string => `${count} ${count === 1 ? 'job' : 'jobs'}`;
  return [
    `${counted(jobs)} of the log stand in the lab${machines === 0 ? '' : `, in ${machines} machines and before them`}.`,
    ...(tooLarge === 0
      ? []
      : [
          `${counted(tooLarge)} ${tooLarge === 1 ? 'has' : 'have'} more pieces than fit in what runs, and the log does not say how many are in it: they wait for a build as a whole.`,
        ]),
    ...(guessed.first === 0
      ? []
      : [
          `For ${counted(guessed.first)} the log does not say where they stand: they wait before their first stage.`,
        ]),
    ...[...guessed.stage].map(
      ([stage, count]) =>
        `The stage “${stage}” of ${counted(count)} is none of the scenario: they wait before their first stage. A mapping can give it the name that the scenario has.`,
    ),
    ...[...unknown].map(
      ([part, count]) =>
        `“${part}” is no demand of the scenario: ${counted(count)} of it are left out. A mapping can give it the name that the scenario has ("parts:").`,
    ),
  ];
}
