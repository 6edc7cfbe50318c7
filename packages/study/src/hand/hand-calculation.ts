import {
  createLocalTime,
  HOURS_PER_WEEK,
  hoursWithin,
  MILLISECONDS_PER_HOUR,
  MILLISECONDS_PER_WEEK,
  type WorkingWindows,
  windowsOf,
} from '@buildweek/core';
import type { Lab, MachineGroup, PeopleGroup } from '@buildweek/model';
import type { HandLoad } from '@buildweek/results';
import { expectedBatches } from './expected-batches.ts';
import { type ExpectedBuilds, expectedBuilds } from './expected-builds.ts';
import { expectedDemand, type WeekRange } from './expected-demand.ts';
import { expectedPeopleWork } from './expected-people-work.ts';
import { type SharedLoad, sharedLoads } from './shared-skills.ts';

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
  const demands = expectedDemand(lab, range);
  const builds = expectedBuilds(lab, demands);
  const batches = expectedBatches(lab, demands, builds);
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
  const work = expectedPeopleWork(lab, demands, builds, batches);
  return [...machines, ...stations, ...peopleLoads(lab, work, range)];
}

/**
 * Work is shared over the hours that other duties leave; then both count against all hours on duty, as the use of
 * people that is simulated does. The two ways of counting reach 100 % together.
 */
function peopleLoads(lab: Lab, work: ReadonlyMap<string, number>, range: WeekRange): HandLoad[] {
  const hours = lab.people.map((group) => {
    const onDuty = hoursOnDuty(lab, group, range);
    return { onDuty, otherDuties: onDuty * group.otherDutiesShare };
  });
  const loads = sharedLoads(
    work,
    lab.people.map(({ skills }, index) => {
      const { onDuty = 0, otherDuties = 0 } = hours[index] ?? {};
      return { skills, availableHours: onDuty - otherDuties };
    }),
  );
  return lab.people.map((group, index) => {
    const { onDuty = 0, otherDuties = 0 } = hours[index] ?? {};
    const load = loads.find((candidate) => candidate.groups.includes(index));
    const share =
      load === undefined || load.availableHours === 0 ? 0 : load.demandHours / load.availableHours;
    const asked = share * (onDuty - otherDuties) + otherDuties;
    return handLoad(
      group.name,
      'people',
      group.count,
      asked,
      onDuty,
      peopleNote(lab, load, index, hours[index]),
    );
  });
}

/** Hours on duty of the whole group in an average week of the range, without its dated leave. */
function hoursOnDuty(lab: Lab, group: PeopleGroup, range: WeekRange): number {
  const { windows, from, to } = windowsIn(lab, group.calendar, range);
  let onLeave = 0;
  for (const { fromHour, toHour } of group.leave) {
    windows.starts.forEach((start, index) => {
      const isLeave = start >= fromHour * MILLISECONDS_PER_HOUR && start < toHour * MILLISECONDS_PER_HOUR;
      const end = Math.min(windows.ends[index] ?? start, to);
      if (isLeave) onLeave += Math.max(0, end - Math.max(start, from)) / MILLISECONDS_PER_HOUR;
    });
  }
  return Math.max(0, group.count * hoursWithin(windows, from, to) - onLeave) / range.weeks;
}

/** Hours in which equipment is there in an average week of the range; null: day and night. */
function hoursThere(lab: Lab, calendar: string | null, range: WeekRange): number {
  if (calendar === null) return HOURS_PER_WEEK;
  const { windows, from, to } = windowsIn(lab, calendar, range);
  return hoursWithin(windows, from, to) / range.weeks;
}

function windowsIn(
  lab: Lab,
  name: string,
  range: WeekRange,
): { readonly windows: WorkingWindows; readonly from: number; readonly to: number } {
  const calendar = lab.calendars.find((candidate) => candidate.name === name);
  if (calendar === undefined) throw new Error(`The lab has no calendar "${name}".`);
  const from = range.fromWeek * MILLISECONDS_PER_WEEK;
  const to = from + range.weeks * MILLISECONDS_PER_WEEK;
  return { windows: windowsOf(calendar, createLocalTime(lab.clockChanges), to), from, to };
}

function handLoad(
  name: string,
  kind: HandLoad['kind'],
  count: number,
  demandHoursPerWeek: number,
  availableHoursPerWeek: number,
  note: string,
): HandLoad {
  const load = availableHoursPerWeek === 0 ? 0 : demandHoursPerWeek / availableHoursPerWeek;
  return { name, kind, count, demandHoursPerWeek, availableHoursPerWeek, load, note };
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

function peopleNote(
  lab: Lab,
  load: SharedLoad | undefined,
  own: number,
  hours: { readonly onDuty: number; readonly otherDuties: number } | undefined,
): string {
  if (hours === undefined || hours.onDuty === 0) return 'Nobody of this group is on duty in these weeks.';
  const duties = hours.otherDuties === 0 ? '' : `, and ${figure(hours.otherDuties)} h of other duties`;
  if (load === undefined || load.skills.length === 0) {
    return `The demand asks for nothing that needs this group${duties}.`;
  }
  const others = load.groups.flatMap((group) => (group === own ? [] : [lab.people[group]?.name ?? '']));
  const skills = load.skills.filter((skill) => lab.people[own]?.skills.includes(skill)).join(', ');
  const shared =
    others.length === 0
      ? ''
      : `. Shared with ${others.join(', ')} as evenly as skills allow, whatever the hour; who is there when it is wanted, or alone can do some of it, will be busier`;
  return `Work for ${skills}, builds and batches full${duties}${shared}.`;
}

function figure(value: number): string {
  return String(Number(value.toPrecision(3)));
}
