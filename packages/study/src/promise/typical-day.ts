import type { DayBuild } from './day-builds.ts';

/** What was started in one play before the lab opens again. */
export interface PlayedDay {
  readonly builds: readonly DayBuild[];
  /** Machines that are down then. */
  readonly down: ReadonlySet<string>;
}

/** A build that is started in the play that is most like all others. */
export interface TypicalStart {
  readonly build: DayBuild;
  /** Numbers of those of its jobs that stand in the lab now. */
  readonly jobs: readonly number[];
  /** Plays in which the same jobs are started together on a machine of this group, and on this very machine. */
  readonly inGroup: number;
  readonly onMachine: number;
  /** Of the plays with it in this group, when it is started, ascending. */
  readonly startTimes: readonly number[];
}

export interface TypicalDay {
  /** Which play is most like all others, from 0. */
  readonly replication: number;
  readonly starts: readonly TypicalStart[];
}

/**
 * The play whose builds are found in most other plays: each of its builds counts by the share of plays in which the
 * same jobs are started together on the same machine group, less a half, so that a build that most plays do not have
 * counts against it. (It is the play that differs from all others in the fewest builds.) Builds that hold only jobs
 * that are still to come cannot be planned and are left out.
 *
 * @param days one for each play, at least one
 * @param jobsInLab jobs with numbers below this stand in the lab now
 * @param groupOf machine group of a machine
 */
export function typicalDay(
  days: readonly PlayedDay[],
  jobsInLab: number,
  groupOf: (machine: string) => string,
): TypicalDay {
  const known = days.map(({ builds }) => knownBuilds(builds, jobsInLab, groupOf));
  const found = new Map<string, KnownBuild[]>();
  for (const one of known.flat()) found.set(one.key, [...(found.get(one.key) ?? []), one]);
  const score = (day: readonly KnownBuild[]): number =>
    day.reduce((sum, { key }) => sum + (found.get(key)?.length ?? 0) / days.length - 0.5, 0);
  let replication = 0;
  known.forEach((day, index) => {
    if (score(day) > score(known[replication] ?? [])) replication = index;
  });
  const starts = (known[replication] ?? []).map(({ build, jobs, key }): TypicalStart => {
    const same = found.get(key) ?? [];
    return {
      build,
      jobs,
      inGroup: same.length,
      onMachine: same.filter(({ build: { machine } }) => machine === build.machine).length,
      startTimes: same.map(({ build: { startedAt } }) => startedAt).sort((a, b) => a - b),
    };
  });
  return { replication, starts };
}

/** The builds of one play that hold jobs of today; a job in several builds has a first, a second and so on. */
function knownBuilds(
  builds: readonly DayBuild[],
  jobsInLab: number,
  groupOf: (machine: string) => string,
): KnownBuild[] {
  const counts = new Map<string, number>();
  return builds.flatMap((build) => {
    const jobs = build.jobs.map(({ job }) => job).filter((job) => job < jobsInLab);
    if (jobs.length === 0 || build.wasRunning) return [];
    const same = `${groupOf(build.machine)}: ${jobs.join(' ')}`;
    const count = (counts.get(same) ?? 0) + 1;
    counts.set(same, count);
    return [{ build, jobs, key: `${same}, ${count}` }];
  });
}

interface KnownBuild {
  readonly build: DayBuild;
  readonly jobs: readonly number[];
  readonly key: string;
}
