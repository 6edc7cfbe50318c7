import { MILLISECONDS_PER_HOUR } from '@buildweek/core';
import type { Lab } from '@buildweek/model';
import type { Overnight } from '@buildweek/results';
import type { DayBuild } from './day-builds.ts';
import type { LabMoments } from './lab-moments.ts';
import type { DayEnd } from './lab-opening.ts';
import { jobName } from './promise-question.ts';
import type { PlayedDay } from './typical-day.ts';

/** What a machine is like when the lab opens again, in one play. Times are elapsed milliseconds. */
interface MachineNight {
  readonly state: Overnight['state'];
  /** Numbers of the jobs that it holds. */
  readonly jobs: readonly number[];
  readonly since: number | null;
  /** Of the closed hours those in which it stands, milliseconds. */
  readonly stands: number;
}

/**
 * What becomes of every machine until the lab opens again: the state in which it is in most plays then, with the share
 * of plays that have it; since when, in the middle of these plays; and the jobs that it holds in at least half of them.
 *
 * @param days one for each play, at least one
 */
export function overnightOf(
  lab: Lab,
  machines: Iterable<string>,
  days: readonly PlayedDay[],
  dayEnd: DayEnd,
  moments: LabMoments,
): Overnight[] {
  return [...machines].map((machine): Overnight => {
    const nights = days.map((day) => nightOf(lab, machine, day, dayEnd, moments));
    const inState = (state: Overnight['state']) => nights.filter((night) => night.state === state);
    const most = STATES.map(inState).reduce((best, one) => (one.length > best.length ? one : best));
    const since = most.flatMap((night) => night.since ?? []).sort((a, b) => a - b);
    const middle = since[Math.floor((since.length - 1) / 2)];
    const jobs = lab.initialState.jobs.flatMap((_, job) => {
      const holding = most.filter((night) => night.jobs.includes(job)).length;
      return 2 * holding >= most.length ? [jobName(lab.initialState.jobs, job)] : [];
    });
    const stands = nights.reduce((sum, night) => sum + night.stands, 0) / nights.length;
    return {
      machine,
      state: most[0]?.state ?? 'is empty',
      jobs,
      since: middle === undefined ? null : moments.moment(middle),
      standsHours: stands / MILLISECONDS_PER_HOUR,
      share: most.length / nights.length,
    };
  });
}

const STATES = ['stands done', 'runs', 'is empty', 'is down'] as const;

function nightOf(
  lab: Lab,
  machine: string,
  { builds, down }: PlayedDay,
  { closes, opens }: DayEnd,
  moments: LabMoments,
): MachineNight {
  const own = builds.filter((build) => build.machine === machine);
  const last = own.at(-1);
  const runs = own.map((build): [number, number] => [
    build.startedAt,
    build.doneAt ?? build.emptiedAt ?? opens,
  ]);
  const held = lab.initialState.machines.find((initial) => initial.machine === machine);
  const heldUntil = held === undefined ? null : moments.elapsed(held.busyUntilHour);
  if (heldUntil !== null) runs.push([moments.now, heldUntil]);
  const printed = runs.reduce(
    (sum, [from, to]) => sum + Math.max(0, Math.min(to, opens) - Math.max(from, closes)),
    0,
  );
  const stands = Math.max(0, opens - closes - printed);
  const empty: MachineNight = { state: 'is empty', jobs: [], since: null, stands };
  if (last === undefined) {
    if (held === undefined || heldUntil === null)
      return down.has(machine) ? { ...empty, state: 'is down' } : empty;
    return heldUntil <= opens
      ? { state: 'stands done', jobs: held.jobs, since: heldUntil, stands }
      : { state: 'runs', jobs: held.jobs, since: null, stands };
  }
  if (last.emptiedAt !== null || last.isLost)
    return down.has(machine) ? { ...empty, state: 'is down' } : empty;
  return { ...holding(last), stands };
}

function holding({ jobs, doneAt }: DayBuild): Omit<MachineNight, 'stands'> {
  const numbers = jobs.map(({ job }) => job);
  return doneAt === null
    ? { state: 'runs', jobs: numbers, since: null }
    : { state: 'stands done', jobs: numbers, since: doneAt };
}
