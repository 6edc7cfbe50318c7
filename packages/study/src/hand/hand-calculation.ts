import type { Lab, MachineGroup } from '@buildweek/model';
import type { HandLoad } from '@buildweek/results';
import { type ExpectedBatches, expectedBatches } from './expected-batches.ts';
import { type ExpectedBuilds, expectedBuilds } from './expected-builds.ts';
import { expectedDemand, type WeekRange } from './expected-demand.ts';
import { expectedPeopleWork } from './expected-people-work.ts';
import { figure, handLoad } from './hand-load.ts';
import { peopleLoads } from './people-loads.ts';
import { hoursThere } from './resource-hours.ts';

/**
 * Load of every machine group, station group and people group by expected values alone. Builds and batches are
 * counted as full, and material changes, failures, breakdowns and absence not at all, so each figure is the least
 * that the demand asks for: at 100 % and above the queue grows without end, however the lab is run; below it, waiting
 * is for the simulation to find.
 *
 * @param range the weeks over which demand and working hours are averaged
 * @throws Error when a name in the lab does not resolve
 */
export function handCalculation(lab: Lab, range: WeekRange): HandLoad[] {
  return loadsOf(lab, range, expectedWork(lab, range));
}

/** What the demand asks for in an average week; it does not depend on how many there are of anything. */
export interface ExpectedWork {
  readonly builds: readonly ExpectedBuilds[];
  readonly batches: readonly ExpectedBatches[];
  /** Hours of people, by skill. */
  readonly people: ReadonlyMap<string, number>;
}

export function expectedWork(lab: Lab, range: WeekRange): ExpectedWork {
  const demands = expectedDemand(lab, range);
  const builds = expectedBuilds(lab, demands);
  const batches = expectedBatches(lab, demands, builds);
  return { builds, batches, people: expectedPeopleWork(lab, demands, builds, batches) };
}

/** @param work from {@link expectedWork} of the same lab, whatever the numbers of its groups */
export function loadsOf(lab: Lab, range: WeekRange, { builds, batches, people }: ExpectedWork): HandLoad[] {
  const machines = lab.machines.map((group): HandLoad => {
    const own = builds.filter((build) => build.group === group);
    const hours = own.reduce((sum, build) => sum + build.buildsPerWeek * build.hoursPerBuild, 0);
    const note = machineNote(own, group);
    return handLoad(
      group.name,
      'machine',
      group.count,
      hours,
      group.count * hoursThere(lab, group.calendar, range),
      note,
    );
  });
  const stations = lab.stations.map((group): HandLoad => {
    const own = batches.filter((batch) => batch.group === group);
    const hours = own.reduce((sum, batch) => sum + batch.batchesPerWeek * batch.hoursPerBatch, 0);
    const count = own.reduce((sum, batch) => sum + batch.batchesPerWeek, 0);
    const note = `${figure(count)} full batches a week${thereWords(group.calendar)}; no breakdowns.`;
    return handLoad(
      group.name,
      'station',
      group.count,
      hours,
      group.count * hoursThere(lab, group.calendar, range),
      note,
    );
  });
  return [...machines, ...stations, ...peopleLoads(lab, people, range)];
}

function machineNote(builds: readonly ExpectedBuilds[], group: MachineGroup): string {
  const count = builds.reduce((sum, build) => sum + build.buildsPerWeek, 0);
  const { fullShare } = group.launch;
  const share = fullShare === null || fullShare === 0 || fullShare === 1 ? null : fullShare;
  const early =
    share === null
      ? ''
      : ` Launched at ${figure(100 * share)} % full it would be ${figure(count / share)} builds.`;
  return `${figure(count)} full builds a week${thereWords(group.calendar)}; no material changes, no breakdowns, no waiting for people.${early}`;
}

function thereWords(calendar: string | null): string {
  return calendar === null ? ', day and night available' : `, available in the hours "${calendar}"`;
}
