import type { LawCheck } from '@buildweek/results';
import type { History } from './history.ts';

/** One law, by how much a replication misses it, and whether it holds. */
export interface CheckedLaw {
  readonly law: LawCheck['law'];
  /** Milliseconds; for Little's law job milliseconds. */
  readonly difference: number;
  readonly holds: boolean;
}

/** Dividing by the pieces of a job rounds, so the hours of jobs are compared to the millisecond. */
const ROUNDING = 1;

/**
 * The laws that hold in every record. Little's law on the sample path (J. D. C. Little, A proof for the queuing
 * formula L = λW, Operations Research 9, 1961): the integral of the number of jobs in the lab is the sum of
 * their stays. Balance of states: what a machine, a station or a person does adds up to calendar time. And the
 * work and the waits of finished jobs add up to their lead times.
 *
 * The figures that the simulator keeps while it plays are held against each other, and what the history says
 * is added up once more.
 *
 * @param history of one replication
 * @returns one entry for each law; a difference that is not a number does not hold
 */
export function checkLaws(history: History): CheckedLaw[] {
  const { laws, machines, stations, people } = history;
  const calendarTime = history.windowEnd - history.windowStart;
  const balance = (times: readonly Float64Array[]): number =>
    largest(times.map((timeInState) => Math.abs(sum(timeInState) - calendarTime)));
  const persons = people.flatMap(({ timeInState, count }) => {
    const states = count === 0 ? 0 : timeInState.length / count;
    return Array.from({ length: count }, (_, person) =>
      timeInState.subarray(person * states, (person + 1) * states),
    );
  });
  const check = (law: LawCheck['law'], allowed: number, differences: readonly number[]): CheckedLaw => {
    const difference = largest(differences);
    return { law, difference, holds: difference <= allowed };
  };
  return [
    check("Little's law", 0, [
      Math.abs(laws.jobArea - laws.jobStays),
      ...history.queues
        .filter((queue) => queue.kind === 'all')
        .map((queue) => Math.abs(queue.area - laws.jobArea)),
    ]),
    check('balance of machine states', 0, [
      laws.machineImbalance,
      balance(machines.map((machine) => machine.timeInState)),
    ]),
    check('balance of station states', 0, [
      laws.stationImbalance,
      balance(stations.map((station) => station.timeInState)),
    ]),
    check('balance of person states', 0, [laws.personImbalance, balance(persons)]),
    check('work and waits make the lead time', ROUNDING, [
      laws.leadTimeImbalance,
      ...partImbalances(history),
    ]),
  ];
}

/** For each part type: the hours of all its steps against the lead times of its jobs. */
function partImbalances({ partHours, jobClasses }: History): number[] {
  return partHours.map(({ part, work, waits }) => {
    const leadTimes = jobClasses
      .filter((jobClass) => jobClass.part === part)
      .reduce((total, jobClass) => total + sum(jobClass.leadTimes), 0);
    return Math.abs(sum(work) + sum(waits) - leadTimes);
  });
}

function sum(values: Float64Array): number {
  return values.reduce((total, value) => total + value, 0);
}

/** The largest of the differences; not a number as soon as one of them is none. */
function largest(differences: readonly number[]): number {
  return differences.reduce((most, difference) => Math.max(most, difference), 0);
}
