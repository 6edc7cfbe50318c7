import type { Lab } from '@buildweek/model';
import type { WeekRange } from '../expected-demand.ts';
import { hoursOfAny, hoursOnDuty } from '../resource-hours.ts';
import { sharedLoads } from '../shared-skills.ts';
import type { StagePlan, Task } from './stage-plan.ts';
import { type Queue, queueOf, type Visits } from './visits.ts';

/** The queue for people who share their work, as if they were one group of like people. */
export interface PeopleQueue extends Queue {
  /** Mean number of persons there for work while anybody is. */
  readonly servers: number;
  /** Names of the groups. */
  readonly names: readonly string[];
}

/** Hours of people that do not depend on what there is to do, worked out once. */
export interface PeopleHours {
  /** For each group of the lab: hours of a week that other duties leave. */
  readonly forWork: readonly number[];
  /** Hours of a week in which somebody of these groups is there. */
  readonly open: (groups: readonly number[]) => number;
}

export function peopleHours(lab: Lab, range: WeekRange): PeopleHours {
  const known = new Map<string, number>();
  return {
    forWork: lab.people.map((group) => hoursOnDuty(lab, group, range) * (1 - group.otherDutiesShare)),
    open: (groups) => {
      const calendars = groups.map((group) => lab.people[group]?.calendar ?? '');
      const key = JSON.stringify(calendars);
      const hours = known.get(key) ?? hoursOfAny(lab, calendars, range);
      known.set(key, hours);
      return hours;
    },
  };
}

/**
 * The queue for each skill that is asked for. Work is shared as evenly as skills allow (see {@link sharedLoads}); those
 * who share it are one group of as many as are there on average. Hours are hours on duty: the formula knows no nights.
 */
export function peopleQueues(
  lab: Lab,
  plans: readonly StagePlan[],
  { forWork, open }: PeopleHours,
): Map<string, PeopleQueue> {
  const visits = new Map<string, Visits[]>();
  for (const { tasks, flow } of plans) {
    for (const task of tasks) {
      const known = visits.get(task.skill) ?? [];
      known.push(visitsOf(task, flow.arrivalVariability));
      visits.set(task.skill, known);
    }
  }
  const asked = new Map([...visits].map(([skill, list]) => [skill, hoursAsked(list)]));
  const loads = sharedLoads(
    asked,
    lab.people.map(({ skills }, index) => ({ skills, availableHours: forWork[index] ?? 0 })),
  );
  const queues = new Map<string, PeopleQueue>();
  for (const { groups, skills, availableHours } of loads) {
    const hoursPerWeek = open(groups);
    const servers = hoursPerWeek === 0 ? 0 : availableHours / hoursPerWeek;
    const names = groups.map((group) => lab.people[group]?.name ?? '');
    const all = skills.flatMap((skill) => visits.get(skill) ?? []);
    const queue = { ...queueOf(all, { servers, hoursPerWeek }), servers: Math.max(1, servers), names };
    for (const skill of skills) queues.set(skill, queue);
  }
  return queues;
}

function hoursAsked(visits: readonly Visits[]): number {
  return visits.reduce((sum, { perWeek, time }) => sum + perWeek * time.mean, 0);
}

function visitsOf({ perWeek, persons, time }: Task, arrivalVariability: number): Visits {
  return { perWeek: perWeek * persons, time, arrivalVariability };
}
