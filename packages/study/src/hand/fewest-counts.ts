import type { Lab, PeopleGroup } from '@buildweek/model';
import type { HandLoad } from '@buildweek/results';
import type { WeekRange } from './expected-demand.ts';
import { hoursOnDuty, hoursThere } from './resource-hours.ts';
import { sharedLoads } from './shared-skills.ts';

/** The smallest numbers of a group with which its load stays below a limit, all other groups as they are. */
export interface FewestCount {
  readonly name: string;
  readonly kind: HandLoad['kind'];
  /** Below 100 %: with one less, its queue grows without end however the lab is run. Null: no number is enough. */
  readonly belowFull: number | null;
  /** Below 85 %; null: no number is enough. */
  readonly comfortable: number | null;
}

/** Above about this load queues grow steeply: common practice, no source. */
const COMFORTABLE_LOAD = 0.85;

/** Nobody searches beyond so many people in one group. */
const MOST_PEOPLE = 1024;

/**
 * @param loads of the lab, from `handCalculation`; their hours asked for do not depend on how many of a group there are
 * @param work hours of people that are asked for in a week, by skill
 */
export function fewestCounts(
  lab: Lab,
  range: WeekRange,
  loads: readonly HandLoad[],
  work: ReadonlyMap<string, number>,
): FewestCount[] {
  const equipment = [
    ...lab.machines.map(({ name, calendar }) => ({ name, calendar, kind: 'machine' as const })),
    ...lab.stations.map(({ name, calendar }) => ({ name, calendar, kind: 'station' as const })),
  ].map(({ name, calendar, kind }): FewestCount => {
    const asked = loads.find((load) => load.kind === kind && load.name === name)?.demandHoursPerWeek ?? 0;
    const there = hoursThere(lab, calendar, range);
    const fewest = (limit: number): number | null => {
      if (asked === 0) return 0;
      return there === 0 ? null : Math.floor(asked / (limit * there)) + 1;
    };
    return { name, kind, belowFull: fewest(1), comfortable: fewest(COMFORTABLE_LOAD) };
  });
  return [...equipment, ...fewestPeople(lab, range, work)];
}

function fewestPeople(lab: Lab, range: WeekRange, work: ReadonlyMap<string, number>): FewestCount[] {
  const hoursForWork = (group: PeopleGroup): number =>
    hoursOnDuty(lab, group, range) * (1 - group.otherDutiesShare);
  const present = lab.people.map((group) => ({
    skills: group.skills,
    availableHours: hoursForWork(group),
  }));
  return lab.people.map((group, index) => {
    const known = new Map<number, number>();
    // The load of whoever carries work that the group could do: with nobody in it, others may.
    const loadWith = (count: number): number => {
      const found = known.get(count) ?? worstLoad(count);
      known.set(count, found);
      return found;
    };
    const worstLoad = (count: number): number => {
      const groups = present.with(index, {
        skills: group.skills,
        availableHours: hoursForWork({ ...group, count }),
      });
      const shared = sharedLoads(work, groups);
      const ratios = group.skills.map((skill) => {
        if ((work.get(skill) ?? 0) === 0) return 0;
        const load = shared.find(({ skills }) => skills.includes(skill));
        return load === undefined ? Number.POSITIVE_INFINITY : load.demandHours / load.availableHours;
      });
      const worst = Math.max(0, ...ratios);
      return worst === 0 ? 0 : worst * (1 - group.otherDutiesShare) + group.otherDutiesShare;
    };
    return {
      name: group.name,
      kind: 'people',
      belowFull: smallestBelow(1, loadWith),
      comfortable: smallestBelow(COMFORTABLE_LOAD, loadWith),
    };
  });
}

/** The load falls with every person: the smallest number below the limit by halving. */
function smallestBelow(limit: number, loadWith: (count: number) => number): number | null {
  if (loadWith(0) < limit) return 0;
  let high = 1;
  while (loadWith(high) >= limit) {
    if (high >= MOST_PEOPLE) return null;
    high *= 2;
  }
  let low = high / 2;
  if (high === 1) return 1;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (loadWith(middle) >= limit) low = middle;
    else high = middle;
  }
  return high;
}
