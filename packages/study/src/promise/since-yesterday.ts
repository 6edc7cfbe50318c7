import type { InitialJob, InitialState, Lab } from '@buildweek/model';
import type { OpenJob } from '@buildweek/results';
import { isNumbered } from './promise-question.ts';

/** The answer of the day before. */
export interface Before {
  /** `2027-03-01 09:30`. */
  readonly now: string;
  readonly openJobs: readonly OpenJob[];
  /** Its lab; null when its scenario cannot be read any more. */
  readonly lab: Lab | null;
}

/** One thing that is other than the day before, and the lab of today with this alone put back. */
export interface Difference {
  /** As "2 rush jobs have come". */
  readonly what: string;
  readonly lab: Lab;
  /** For each job of today its position in that lab; -1 when it is not in it. */
  readonly positions: readonly number[];
  /** Jobs of today that it is told of; null: all. */
  readonly only: number | null;
}

/**
 * For each job of today the same job in the answer of the day before; null for those that have come since. Jobs are
 * known again by their names; those that only have numbers by their demand, pieces, and the moments at which they came and are due; of several that are alike the
 * first is the first.
 */
export function sameJobs(today: readonly OpenJob[], before: readonly OpenJob[]): (OpenJob | null)[] {
  const known = new Map<string, OpenJob[]>();
  for (const job of before) known.set(keyOf(job), [...(known.get(keyOf(job)) ?? []), job]);
  return today.map((job) => known.get(keyOf(job))?.shift() ?? null);
}

function keyOf({ job, demand, quantity, arrived, due, rush }: OpenJob): string {
  if (!isNumbered(job)) return job;
  return JSON.stringify([demand, quantity, arrived, due?.at ?? null, rush]);
}

/** What is other than the day before, one thing at a time. */
export function differencesSince(
  lab: Lab,
  today: readonly OpenJob[],
  same: readonly (OpenJob | null)[],
  before: Before,
): Difference[] {
  return [...jobsSince(lab, today, same), ...steppedBack(lab, today, same), ...changedLab(lab, before)];
}

/** Rush jobs that have come, and the others. */
function jobsSince(lab: Lab, today: readonly OpenJob[], same: readonly (OpenJob | null)[]): Difference[] {
  return [true, false].flatMap((rush) => {
    const come = today.flatMap((job, index) => (same[index] === null && job.rush === rush ? [index] : []));
    if (come.length === 0) return [];
    const count =
      come.length === 1
        ? `one ${rush ? 'rush job has' : 'job has'}`
        : `${come.length} ${rush ? 'rush jobs' : 'jobs'} have`;
    const { state, positions } = withoutJobs(lab.initialState, come);
    return [{ what: `${count} come`, lab: { ...lab, initialState: state }, positions, only: null }];
  });
}

function withoutJobs(
  state: InitialState,
  left: readonly number[],
): { readonly state: InitialState; readonly positions: readonly number[] } {
  let next = 0;
  const positions = state.jobs.map((_, index) => (left.includes(index) ? -1 : next++));
  const moved = (jobs: readonly number[]): number[] =>
    jobs.flatMap((job) => (positions[job] === undefined || positions[job] < 0 ? [] : [positions[job]]));
  const { pinned, ...rest } = state;
  return {
    positions,
    state: {
      ...rest,
      jobs: state.jobs.filter((_, index) => !left.includes(index)),
      machines: state.machines.map((machine) => ({ ...machine, jobs: moved(machine.jobs) })),
      ...(pinned === undefined
        ? {}
        : {
            pinned: pinned
              .map((build) => ({ ...build, jobs: moved(build.jobs) }))
              .filter(({ jobs }) => jobs.length > 0),
          }),
    },
  };
}

/** Jobs that stand at an earlier stage than the day before: a build has failed, parts were rejected, a file was changed. */
function steppedBack(lab: Lab, today: readonly OpenJob[], same: readonly (OpenJob | null)[]): Difference[] {
  return today.flatMap((job, index): Difference[] => {
    const earlier = same[index];
    const stages = lab.parts.find(({ name }) => name === job.part)?.stages.map(({ name }) => name) ?? [];
    if (earlier == null || stages.indexOf(job.stage) >= stages.indexOf(earlier.stage)) return [];
    const jobs = lab.initialState.jobs.map(
      (one, at): InitialJob => (at === index ? { ...one, stage: earlier.stage, remainingHours: null } : one),
    );
    const machines = lab.initialState.machines.map((machine) => ({
      ...machine,
      jobs: machine.jobs.filter((held) => held !== index),
    }));
    return [
      {
        what: `it stands at ${job.stage} again, and was at ${earlier.stage}`,
        lab: { ...lab, initialState: { ...lab.initialState, jobs, machines } },
        positions: jobs.map((_, at) => at),
        only: index,
      },
    ];
  });
}

/** People or machines are stated otherwise than the day before; both days have to count their hours from the same Monday. */
function changedLab(lab: Lab, { lab: before }: Before): Difference[] {
  if (before === null || before.startDate !== lab.startDate) return [];
  const positions = lab.initialState.jobs.map((_, index) => index);
  const differs = (one: unknown, other: unknown): boolean => JSON.stringify(one) !== JSON.stringify(other);
  const people = lab.people.filter((group) =>
    differs(
      group,
      before.people.find(({ name }) => name === group.name),
    ),
  );
  const machines = lab.machines.filter((group) =>
    differs(
      group,
      before.machines.find(({ name }) => name === group.name),
    ),
  );
  const sameNames = (
    one: readonly { readonly name: string }[],
    other: readonly { readonly name: string }[],
  ): boolean =>
    !differs(
      one.map(({ name }) => name),
      other.map(({ name }) => name),
    );
  return [
    ...(people.length > 0 && sameNames(lab.people, before.people)
      ? [
          {
            what: `${names(people)} are stated otherwise (how many, when they are there, who is away)`,
            lab: { ...lab, people: before.people, calendars: before.calendars },
            positions,
            only: null,
          },
        ]
      : []),
    ...(machines.length > 0 && sameNames(lab.machines, before.machines)
      ? [
          {
            what: `${names(machines)} are stated otherwise (how many, what is out of order)`,
            lab: { ...lab, machines: before.machines },
            positions,
            only: null,
          },
        ]
      : []),
  ];
}

function names(groups: readonly { readonly name: string }[]): string {
  return groups.map(({ name }) => `“${name}”`).join(' and ');
}
