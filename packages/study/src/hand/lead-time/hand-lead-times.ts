import type { Lab } from '@buildweek/model';
import type { HandEstimate } from '@buildweek/results';
import { percent } from '../../words/figures.ts';
import { expectedBuilds } from '../expected-builds.ts';
import { expectedDemand, expectedSentOut, type WeekRange } from '../expected-demand.ts';
import { hoursThere } from '../resource-hours.ts';
import { batchFlows, stationQueue } from './batch-queue.ts';
import { buildFlows } from './build-flow.ts';
import { machineQueue } from './machine-queue.ts';
import { type PeopleQueue, peopleHours, peopleQueues } from './people-queue.ts';
import { outsideHours } from './sent-out.ts';
import { type StagePlan, stagePlans, waitForMates } from './stage-plan.ts';
import { streamFlows } from './stream-flow.ts';

/** A lead time by hand, of one part type or of all. */
export interface PartEstimate {
  /** Null: all part types, by their jobs. */
  readonly part: string | null;
  readonly estimate: HandEstimate;
}

/** Builds are taken to be fuller where people could not keep up with more of them: this use of people is too much. */
const CROWDED = 0.95;
const FULLNESSES = [0, 0.25, 0.5, 0.75, 1];

/**
 * A rough lead time of every part type by formulas alone: hours of its stages (means), waits by the formula of
 * Sakasegawa before machines, stations and people, and the time until a build or batch is complete. Breakdowns and
 * builds in vain make the time of a machine longer and more variable. What it does not know: shifts and closed days
 * (hours of people count as if they followed each other), work that is sent out only now and then, carriers, changes of material, permissions for the night,
 * absence, rush jobs, and waiting of a machine for people. It is there to be held against the simulation.
 *
 * @param range the weeks over which demand and working hours are averaged
 * @returns all part types together first, then each that is asked for
 * @throws Error when a name in the lab does not resolve
 */
export function handLeadTimes(lab: Lab, range: WeekRange): PartEstimate[] {
  const demands = expectedDemand(lab, range);
  const flows = streamFlows(lab, demands);
  const { plans, people } = planned(lab, range, flows);
  const estimates = new Map<string, Weighted[]>();
  flows.forEach((flow, index) => {
    const weighted = { jobs: flow.demand.jobsPerWeek, estimate: estimateOf(plans[index] ?? [], people) };
    estimates.set(flow.part.name, [...(estimates.get(flow.part.name) ?? []), weighted]);
  });
  for (const { stream, jobsPerWeek } of expectedSentOut(lab, range)) {
    if (stream.sentOut === null || jobsPerWeek === 0) continue;
    const stageHours = outsideHours(lab, stream.sentOut.leadTime);
    const weighted = { jobs: jobsPerWeek, estimate: byHand({ ...noHours(), stageHours }) };
    estimates.set(stream.part, [...(estimates.get(stream.part) ?? []), weighted]);
  }
  const byPart = lab.parts.flatMap(({ name }): (PartEstimate & { readonly jobs: number })[] => {
    const found = estimates.get(name);
    if (found === undefined) {
      const reason = endless(lab, name);
      return reason === null ? [] : [{ part: name, jobs: 0, estimate: { kind: 'refused', reason } }];
    }
    const jobs = found.reduce((sum, one) => sum + one.jobs, 0);
    return [{ part: name, jobs, estimate: averaged(found) }];
  });
  if (byPart.length === 0) return [];
  return [
    { part: null, estimate: averaged(byPart) },
    ...byPart.map(({ part, estimate }) => ({ part, estimate })),
  ];
}

interface Plan {
  /** For each flow its stages. */
  readonly plans: readonly (readonly StagePlan[])[];
  readonly people: ReadonlyMap<string, PeopleQueue>;
}

function planned(lab: Lab, range: WeekRange, flows: ReturnType<typeof streamFlows>): Plan {
  const full = expectedBuilds(
    lab,
    flows.map(({ demand }) => demand),
  );
  const builds = buildFlows(lab, flows, full);
  const hours = peopleHours(lab, range);
  const capacities = new Map(
    [...lab.machines, ...lab.stations].map((group) => [
      group,
      { servers: group.count, hoursPerWeek: hoursThere(lab, group.calendar, range) },
    ]),
  );
  const capacityOf = (group: Lab['machines'][number] | Lab['stations'][number]) =>
    capacities.get(group) ?? { servers: 0, hoursPerWeek: 0 };
  const at = (fullness: number): Plan => {
    const machines = lab.machines.map((group) => machineQueue(group, builds, capacityOf(group), fullness));
    const batches = batchFlows(
      lab,
      flows,
      machines.flatMap((machine) => machine.builds),
      full,
    );
    const stations = lab.stations.map((group) =>
      stationQueue(group, flows, batches, capacityOf(group), fullness),
    );
    const plans = flows.map((flow) => stagePlans(flow, machines, stations));
    return { plans, people: peopleQueues(lab, plans.flat(), hours) };
  };
  let plan = at(0);
  for (const fullness of FULLNESSES.slice(1)) {
    if ([...plan.people.values()].every(({ utilization }) => utilization < CROWDED)) break;
    plan = at(fullness);
  }
  return plan;
}

/** What a lead time by hand is made of. */
const HOURS = [
  'stageHours',
  'troubleHours',
  'requesterHours',
  'batchHours',
  'equipmentHours',
  'peopleHours',
] as const;
type Hours = Record<(typeof HOURS)[number], number>;

function noHours(): Hours {
  return {
    stageHours: 0,
    troubleHours: 0,
    requesterHours: 0,
    batchHours: 0,
    equipmentHours: 0,
    peopleHours: 0,
  };
}

function byHand(hours: Hours): HandEstimate {
  return { kind: 'by hand', leadTimeHours: HOURS.reduce((sum, key) => sum + hours[key], 0), ...hours };
}

function estimateOf(plans: readonly StagePlan[], people: ReadonlyMap<string, PeopleQueue>): HandEstimate {
  const total = noHours();
  for (const plan of plans) {
    const { passes, equipment } = plan;
    if (equipment !== null && equipment.utilization >= 1) {
      return refused([equipment.name], equipment.utilization);
    }
    for (const key of [
      'stageHours',
      'troubleHours',
      'requesterHours',
      'batchHours',
      'equipmentHours',
    ] as const) {
      total[key] += passes * plan[key];
    }
    for (const { skill, time, atOnce } of plan.tasks) {
      const queue = people.get(skill);
      if (queue === undefined) {
        return { kind: 'refused', reason: `Nobody who can do “${skill}” is on duty in these weeks.` };
      }
      if (queue.utilization >= 1) {
        return refused(queue.names, queue.utilization);
      }
      total.peopleHours += passes * (queue.waitHours + waitForMates(atOnce, queue.servers, time.mean));
    }
  }
  return byHand(total);
}

function refused(names: readonly string[], utilization: number): HandEstimate {
  const whose = names.map((name) => `“${name}”`).join(', ');
  const reason = Number.isFinite(utilization)
    ? `${percent(utilization)} % of the hours of ${whose} are asked for, trouble counted: the queue grows without end.`
    : `Of ${whose} nothing is there in these weeks, though it is asked for.`;
  return { kind: 'refused', reason };
}

interface Weighted {
  readonly jobs: number;
  readonly estimate: HandEstimate;
}

/** The mean over jobs; refused when one of them is. */
function averaged(list: readonly Weighted[]): HandEstimate {
  const jobs = list.reduce((sum, one) => sum + one.jobs, 0);
  const mean = noHours();
  for (const { jobs: own, estimate } of list) {
    if (estimate.kind === 'refused') return estimate;
    for (const key of HOURS) mean[key] += (own / jobs) * estimate[key];
  }
  return byHand(mean);
}

function endless(lab: Lab, part: string): string | null {
  const backlog = lab.demand.some((one) => one.part === part && one.arrivals.kind === 'kept in the lab');
  return backlog
    ? 'An endless backlog of jobs is kept in the lab: how long one takes follows from how many are kept, not from formulas of waiting.'
    : null;
}
