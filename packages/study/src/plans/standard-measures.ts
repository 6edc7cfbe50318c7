import { type History, type JobClassHistory, MILLISECONDS_PER_HOUR } from '@buildweek/core';
import type { Lab } from '@buildweek/model';
import {
  MACHINE_STATES,
  PERSON_STATES,
  SPEED_MEASURE,
  useOfState,
  WAIT_CAUSES,
  type WaitCause,
} from '@buildweek/results';
import { pooledQuantile } from '@buildweek/statistics';
import type { ReplicationMeasure } from './replication-measure.ts';

const WAITS: readonly { readonly name: string; readonly causes: readonly WaitCause[] }[] = [
  { name: 'wait for people', causes: ['person', 'shift'] },
  { name: 'wait for machines', causes: ['machine', 'machine down', 'carrier'] },
  { name: 'wait for a build to fill', causes: ['batch'] },
];

type JobFilter = (jobs: JobClassHistory) => boolean;

/**
 * What every comparison of plans looks at: lead times, promises, jobs in the lab, output, people, machines. It is one
 * list for all labs that are compared, because what was observed is found by its place in the list: what only one of
 * them has (a group, rush jobs, work that is sent out) is looked at in all, and has no value where there is none of it.
 */
export function standardMeasures(labs: readonly Lab[]): ReplicationMeasure[] {
  const demand = labs.flatMap((lab) => lab.demand);
  const hasRush = demand.some(({ rushShare }) => rushShare > 0);
  const hasNormal = demand.some(({ rushShare }) => rushShare < 1);
  const promises = demand.some(({ due, rushDue }) => due.kind !== 'none' || rushDue.kind !== 'none');
  const people = namesOf(labs.flatMap((lab) => lab.people));
  const all: JobFilter = () => true;
  const rush: JobFilter = (jobs) => jobs.rush;
  return [
    meanLeadTime(),
    percentileOfLeadTime('half of jobs within', all, 0.5),
    percentileOfLeadTime(SPEED_MEASURE, all, 0.9),
    ...(hasRush && hasNormal ? [percentileOfLeadTime('nine of ten rush jobs within', rush, 0.9)] : []),
    ...(promises ? [onTime('jobs on time', all)] : []),
    ...(promises && hasRush && hasNormal ? [onTime('rush jobs on time', rush)] : []),
    ...(demand.some(({ sentOut }) => sentOut !== null) ? [sentOut()] : []),
    finishedPieces(),
    jobsInLab(),
    ...WAITS.map(({ name, causes }) => waits(name, causes)),
    ...(people.length > 0 ? [peopleBusy('people at work', null)] : []),
    ...people.map((name) => peopleBusy(`${name} at work`, name)),
    ...namesOf(labs.flatMap((lab) => lab.machines)).map(machinesAtWork),
  ];
}

function namesOf(groups: readonly { readonly name: string }[]): string[] {
  return [...new Set(groups.map(({ name }) => name))];
}

function meanLeadTime(): ReplicationMeasure {
  return {
    name: 'mean lead time',
    unit: 'hours',
    better: 'lower',
    of: ({ jobClasses }) => {
      let hours = 0;
      let jobs = 0;
      for (const { leadTimes } of jobClasses) {
        for (const leadTime of leadTimes) hours += leadTime;
        jobs += leadTimes.length;
      }
      return [hours / MILLISECONDS_PER_HOUR, jobs];
    },
  };
}

/** The percentile of the jobs of one period; what is compared is its mean over periods. */
function percentileOfLeadTime(name: string, jobs: JobFilter, share: number): ReplicationMeasure {
  return {
    name,
    unit: 'hours',
    better: 'lower',
    of: ({ jobClasses }) => {
      const classes = jobClasses.filter(jobs);
      const leadTimes = classes.map((found) => found.leadTimes);
      const unfinished = classes.map((found) => found.unfinished);
      // A period without any such job says nothing, and counts for nothing.
      if (leadTimes.every(({ length }) => length === 0) && unfinished.every((count) => count === 0)) {
        return [0, 0];
      }
      return [pooledQuantile(leadTimes, unfinished, share) / MILLISECONDS_PER_HOUR, 1];
    },
  };
}

function onTime(name: string, jobs: JobFilter): ReplicationMeasure {
  return {
    name,
    unit: 'share',
    better: 'higher',
    of: ({ jobClasses }) => {
      const classes = jobClasses.filter(jobs);
      return [total(classes, (found) => found.onTime), total(classes, (found) => found.promised)];
    },
  };
}

function sentOut(): ReplicationMeasure {
  return {
    name: 'jobs sent out',
    unit: 'share',
    better: 'neither',
    of: ({ jobClasses }) => [
      total(jobClasses, (found) => found.sentOut),
      total(jobClasses, (found) => found.arrived),
    ],
  };
}

function finishedPieces(): ReplicationMeasure {
  return {
    name: 'finished pieces',
    unit: 'pieces per week',
    better: 'higher',
    of: ({ weeks }) => [total(weeks.finishedParts, (pieces) => pieces), weeks.finishedParts.length],
  };
}

/** Hours of an average job that go to waiting. */
function waits(name: string, causes: readonly WaitCause[]): ReplicationMeasure {
  const counted = WAIT_CAUSES.map((cause) => causes.includes(cause));
  return {
    name,
    unit: 'hours',
    better: 'lower',
    of: ({ partHours }) => {
      let time = 0;
      let jobs = 0;
      for (const found of partHours) {
        found.waits.forEach((wait, entry) => {
          if (counted[entry % WAIT_CAUSES.length]) time += wait;
        });
        jobs += found.finishedJobs;
      }
      return [time / MILLISECONDS_PER_HOUR, jobs];
    },
  };
}

function jobsInLab(): ReplicationMeasure {
  return {
    name: 'jobs in the lab',
    unit: 'jobs',
    better: 'lower',
    of: ({ weeks }) => [total(weeks.jobsInLab, (jobs) => jobs), weeks.jobsInLab.length],
  };
}

/** @param group null: all people together */
function peopleBusy(name: string, group: string | null): ReplicationMeasure {
  return {
    name,
    unit: 'share',
    better: 'neither',
    of: ({ people }) => {
      let busy = 0;
      let onDuty = 0;
      for (const found of people) {
        if (group !== null && found.group !== group) continue;
        const times = timesByState(found.timeInState, PERSON_STATES.length);
        const of = (state: (typeof PERSON_STATES)[number]): number =>
          times[PERSON_STATES.indexOf(state)] ?? 0;
        // Overtime is work, but no hour on duty.
        busy += of('work') + of('other duties');
        onDuty += of('work') + of('other duties') + of('idle');
      }
      return [busy, onDuty];
    },
  };
}

function machinesAtWork(group: string): ReplicationMeasure {
  return {
    name: `${group} at work`,
    unit: 'share',
    better: 'neither',
    of: ({ machines, windowStart, windowEnd }: History) => {
      let atWork = 0;
      let units = 0;
      for (const unit of machines) {
        if (unit.group !== group) continue;
        units++;
        unit.timeInState.forEach((time, state) => {
          if (useOfState(MACHINE_STATES[state] ?? 'off') === 'at work') atWork += time;
        });
      }
      return [atWork, units * (windowEnd - windowStart)];
    },
  };
}

/** Sums over individuals: the states of the first, then those of the next. */
function timesByState(timeInState: Float64Array, states: number): Float64Array {
  const sums = new Float64Array(states);
  timeInState.forEach((time, index) => {
    sums[index % states] = (sums[index % states] ?? 0) + time;
  });
  return sums;
}

function total<Item>(items: Iterable<Item>, of: (item: Item) => number): number {
  let sum = 0;
  for (const item of items) sum += of(item);
  return sum;
}
