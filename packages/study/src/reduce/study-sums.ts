import type { History } from '@buildweek/core';
import type { Economics, Lab, PartType, Process, Target } from '@buildweek/model';
import {
  MACHINE_STATES,
  type MachineState,
  type Results,
  STATION_STATES,
  type StationState,
} from '@buildweek/results';
import { MoneySums } from '../money/money-sums.ts';
import { TargetSums } from '../targets/target-sums.ts';
import { BuildSums } from './build-sums.ts';
import { FlowSums } from './flow-sums.ts';
import { type GroupUse, GroupUseSums } from './group-use-sums.ts';
import { JobSums } from './job-sums.ts';
import { LawSums } from './law-sums.ts';
import { type HoursEntry, OverallHoursSums } from './overall-hours-sums.ts';
import { PartHoursSums } from './part-hours-sums.ts';
import { PeopleSums } from './people-sums.ts';
import { QueueSums } from './queue-sums.ts';
import { SentOutSums } from './sent-out-sums.ts';
import { TroubleSums } from './trouble-sums.ts';
import { UnitSums } from './unit-sums.ts';

/** Everything that is measured, as it stands in `Results`. */
export type Measures = Pick<
  Results,
  | 'jobs'
  | 'flow'
  | 'queues'
  | 'hours'
  | 'machines'
  | 'builds'
  | 'stations'
  | 'people'
  | 'trouble'
  | 'sentOut'
  | 'money'
  | 'checks'
>;

/**
 * Takes in histories one by one, in the order of their replications, and keeps running sums; of the histories
 * themselves only the lead times stay, for exact percentiles.
 */
export class StudySums {
  readonly jobs: JobSums;
  readonly targets: TargetSums;
  private readonly money: MoneySums | null;
  private readonly flow: FlowSums;
  private readonly queues: readonly QueueSums[];
  private readonly partHours: readonly PartHoursSums[];
  private readonly machines: readonly UnitSums<MachineState>[];
  private readonly stations: readonly UnitSums<StationState>[];
  private readonly builds: BuildSums;
  private readonly people: readonly PeopleSums[];
  private readonly trouble: TroubleSums;
  private readonly sentOut: SentOutSums;
  private readonly laws = new LawSums();
  private readonly overallHours = new OverallHoursSums();
  private readonly groupUses: GroupUseSums;
  private readonly processes: ReadonlyMap<string, Process>;
  private count = 0;

  /**
   * @param first any history of the study: what there is to be measured
   * @throws Error when the lab does not know a part of the history
   */
  constructor(lab: Lab, first: History, targets: readonly Target[] = [], economics: Economics | null = null) {
    this.processes = new Map(lab.machines.map((group) => [group.name, group.process]));
    this.groupUses = new GroupUseSums(lab);
    this.jobs = new JobSums(first.jobClasses);
    this.targets = new TargetSums(lab, targets, economics);
    this.money = economics === null ? null : new MoneySums(lab, economics);
    this.flow = new FlowSums(first.weeks.arrivedJobs.length);
    this.queues = first.queues.map((queue) => new QueueSums(queue));
    this.partHours = first.partHours.map((hours) => {
      const part = lab.parts.find((candidate) => candidate.name === hours.part);
      if (part === undefined) throw new Error(`The lab has no part "${hours.part}".`);
      return new PartHoursSums(hours, part, processOf(part, lab));
    });
    this.machines = first.machines.map((unit) => new UnitSums(unit, MACHINE_STATES));
    this.stations = first.stations.map((unit) => new UnitSums(unit, STATION_STATES));
    this.builds = new BuildSums(lab);
    this.trouble = new TroubleSums(first);
    this.sentOut = new SentOutSums(lab);
    this.people = first.people.map((group) => new PeopleSums(group));
  }

  get replications(): number {
    return this.count;
  }

  add(history: History): void {
    const windowLength = history.windowEnd - history.windowStart;
    this.count++;
    this.jobs.add(history.jobClasses);
    this.targets.add(history);
    this.money?.add(history);
    this.flow.add(history.weeks);
    this.laws.add(history);
    this.trouble.add(history);
    this.sentOut.add(history);
    this.builds.add(history);
    this.overallHours.add(history.partHours);
    this.groupUses.add(history);
    each(this.queues, history.queues, (sums, queue) => sums.add(queue, windowLength));
    each(this.partHours, history.partHours, (sums, hours) => sums.add(hours));
    each(this.machines, history.machines, (sums, unit) => sums.add(unit, windowLength));
    each(this.stations, history.stations, (sums, unit) => sums.add(unit, windowLength));
    each(this.people, history.people, (sums, people) => sums.add(people, windowLength));
  }

  /** @throws RangeError for fewer than 20 replications */
  measures(level: number): Measures {
    return {
      jobs: this.jobs.results(level),
      flow: this.flow.results(level),
      queues: this.queues.map((sums) => sums.results(level)),
      hours: this.partHours.flatMap((sums) => sums.results(level) ?? []),
      machines: this.machines.map((sums) => {
        const { runsPerWeek, ...use } = sums.results(level);
        return { ...use, process: this.processes.get(use.group) ?? 'other', buildsPerWeek: runsPerWeek };
      }),
      builds: this.builds.results(level),
      stations: this.stations.map((sums) => {
        const { runsPerWeek, ...use } = sums.results(level);
        return { ...use, batchesPerWeek: runsPerWeek };
      }),
      people: this.people.map((sums) => sums.results(level)),
      trouble: this.trouble.results(level),
      sentOut: this.sentOut.results(level),
      money: this.money?.results(level) ?? null,
      checks: this.laws.results(),
    };
  }

  /** What only the headline speaks of. Errors as above. */
  forHeadline(level: number): { hours: HoursEntry[]; uses: GroupUse[] } {
    return { hours: this.overallHours.results(level), uses: this.groupUses.results(level) };
  }
}

/** Process of the machines on which a part is built; null for a route without a build. */
function processOf(part: PartType, lab: Lab): Process | null {
  for (const stage of part.stages) {
    if (stage.kind === 'build') {
      return lab.machines.find((group) => group.name === stage.machineGroup)?.process ?? null;
    }
  }
  return null;
}

function each<Sums, Item>(
  sums: readonly Sums[],
  items: readonly Item[],
  add: (sums: Sums, item: Item) => void,
): void {
  if (sums.length !== items.length) throw new Error('Histories of one study do not measure the same things.');
  sums.forEach((one, index) => {
    const item = items[index];
    if (item !== undefined) add(one, item);
  });
}
