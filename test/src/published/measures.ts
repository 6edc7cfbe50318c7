import type { History, UnitHistory } from '@buildweek/core';
import {
  type Estimate,
  type EstimateOrRefused,
  type JobClass,
  MACHINE_STATES,
  type MachineState,
  type PersonState,
  type Queue,
  STATION_STATES,
  type StationState,
  type StationUse,
} from '@buildweek/results';
import {
  estimateOver,
  type Moments,
  meanInterval,
  moments,
  pooledDeviationInterval,
  ratioInterval,
} from '@buildweek/statistics';
import type { Played } from './play.ts';

/** Where the measures of theory stand in the results of a scenario. Each throws when its measure is not there. */

const LEVEL = 0.95;
const MILLISECONDS_PER_HOUR = 3_600_000;

export const meanLeadTime = (played: Played): Estimate => given(allJobs(played).meanLeadTime);

export const deviationOfLeadTime = (played: Played): Estimate =>
  given(allJobs(played).standardDeviationOfLeadTime);

/** @param share 0.9 for the time that nine of ten jobs stay below */
export function leadTimePercentile(share: number): (played: Played) => Estimate {
  return (played) => percentile(allJobs(played), share);
}

/** The chance that a job is done within what is promised: a point of the distribution function of lead times. */
export const onTime = (played: Played): Estimate => given(allJobs(played).onTime);

/** Mean lead time of the jobs of one part type. */
export function meanLeadTimeOf(part: string): (played: Played) => Estimate {
  return (played) => given(jobsOf(played, part).meanLeadTime);
}

export function deviationOfLeadTimeOf(part: string): (played: Played) => Estimate {
  return (played) => given(jobsOf(played, part).standardDeviationOfLeadTime);
}

export function leadTimePercentileOf(part: string, share: number): (played: Played) => Estimate {
  return (played) => percentile(jobsOf(played, part), share);
}

export function onTimeOf(part: string): (played: Played) => Estimate {
  return (played) => given(jobsOf(played, part).onTime);
}

/** Time average of the jobs in the lab. */
export const jobsInLab = (played: Played): Estimate => queueOf(played, 'jobs in the lab').meanLength;

export function queueLength(queue: string): (played: Played) => Estimate {
  return (played) => queueOf(played, queue).meanLength;
}

export function meanWait(queue: string): (played: Played) => Estimate {
  return (played) => given(queueOf(played, queue).meanWait);
}

export function waitPercentile(queue: string, share: number): (played: Played) => Estimate {
  return (played) => {
    const found = queueOf(played, queue).waitPercentiles.find((one) => one.share === share);
    return given(found?.longRun);
  };
}

/** Share of time that the only station of a group is in a state. */
export function stationShare(group: string, state: StationState): (played: Played) => Estimate {
  return (played) => given(stationOf(played, group).states.find((one) => one.state === state)?.share);
}

/** Mean size of the batches of the only station of a group. */
export function meanBatch(group: string): (played: Played) => Estimate {
  return (played) => {
    const capacity = played.lab.stations.find((station) => station.name === group)?.capacity;
    if (capacity === undefined) throw new Error(`There is no station "${group}".`);
    return multiplied(given(stationOf(played, group).meanFill), capacity);
  };
}

/** Jobs in the lab in one hour of the week. @param hour since Monday 00:00 */
export function jobsInHour(hour: number): (played: Played) => Estimate {
  return (played) => {
    const { value, low, high, level, replications } = queueOf(played, 'jobs in the lab').byHourOfWeek;
    const at = (values: readonly number[]): number => values[hour] ?? Number.NaN;
    return { kind: 'estimate', value: at(value), low: at(low), high: at(high), level, replications };
  };
}

/** Hours per job that a step of a part type waits, for whatever reason; only where there is one. */
export function waitOfStep(part: string, stage: string, phase: string): (played: Played) => Estimate {
  return ({ results }) => {
    const steps = results.hours.find((one) => one.part === part)?.steps ?? [];
    const waits = steps.find((one) => one.stage === stage && one.phase === phase)?.waits ?? [];
    if (waits.length > 1) throw new Error(`"${stage}" waits for several reasons.`);
    return given(waits[0]?.hours);
  };
}

/** Standard deviation of the single waits; `Results` has none, so it is taken from the histories. */
export function deviationOfWait(queue: string): (played: Played) => Estimate {
  return (played) => {
    const each: Moments[] = waitsOf(played, queue).map(moments);
    return multiplied(
      given(estimateOver(each.length, () => pooledDeviationInterval(each, LEVEL))),
      1 / MILLISECONDS_PER_HOUR,
    );
  };
}

/** Share of visits that wait at most so long; from the histories as well. */
export function waitsWithin(queue: string, hours: number): (played: Played) => Estimate {
  return (played) => {
    const waits = waitsOf(played, queue);
    const counts = waits.map((each) => each.filter((wait) => wait <= hours * MILLISECONDS_PER_HOUR).length);
    return ratioOver(
      counts,
      waits.map((each) => each.length),
    );
  };
}

/** Share of time with at most so many jobs in the lab; of cases that are traced. */
export function jobsWithin(most: number): (played: Played) => Estimate {
  return ({ occupancies }) =>
    meanOver(occupancies.map((shares) => shares.slice(0, most + 1).reduce((sum, share) => sum + share, 0)));
}

/** Share of the jobs that are withdrawn; `Results` only gives their number. */
export const cancelledShare = ({ histories }: Played): Estimate =>
  ratioOver(
    histories.map(({ jobClasses }) => jobClasses.reduce((sum, one) => sum + one.cancelled, 0)),
    histories.map(({ jobClasses }) => jobClasses.reduce((sum, one) => sum + one.arrived, 0)),
  );

/** Jobs that are finished in an hour, over all measured weeks. */
export const finishedPerHour = ({ histories }: Played): Estimate =>
  meanOver(
    histories.map((history) => {
      const finished = history.weeks.finishedJobs.reduce((sum, jobs) => sum + jobs, 0);
      return finished / hoursOf(history);
    }),
  );

/** Mean number of all machines that are in a state at a time. */
export function machinesIn(state: MachineState): (played: Played) => Estimate {
  const index = MACHINE_STATES.indexOf(state);
  return ({ histories }) => meanOver(histories.map((history) => unitsIn(history, history.machines, index)));
}

/** Mean number of all stations that are in a state at a time. */
export function stationsIn(state: StationState): (played: Played) => Estimate {
  const index = STATION_STATES.indexOf(state);
  return ({ histories }) => meanOver(histories.map((history) => unitsIn(history, history.stations, index)));
}

/** Breakdowns of all stations in an hour. */
export const breakdownsPerHour = ({ histories }: Played): Estimate =>
  meanOver(histories.map((history) => breakdownsOf(history) / hoursOf(history)));

/** Hours from a breakdown of a station to the end of its repair. */
export const hoursDownPerBreakdown = ({ histories }: Played): Estimate =>
  ratioOver(
    histories.map(
      (history) => unitsIn(history, history.stations, STATION_STATES.indexOf('down')) * hoursOf(history),
    ),
    histories.map(breakdownsOf),
  );

/** Share of the time of the people of a group in a state. */
export function peopleShare(group: string, state: PersonState): (played: Played) => Estimate {
  return ({ results }) => {
    const people = results.people.find((one) => one.group === group);
    return given(people?.states.find((one) => one.state === state)?.share);
  };
}

function breakdownsOf({ stations }: History): number {
  return stations.reduce((sum, station) => sum + station.breakdowns, 0);
}

function unitsIn(history: History, units: readonly UnitHistory[], state: number): number {
  const milliseconds = units.reduce((sum, unit) => sum + (unit.timeInState[state] ?? Number.NaN), 0);
  return milliseconds / (history.windowEnd - history.windowStart);
}

function hoursOf({ windowStart, windowEnd }: History): number {
  return (windowEnd - windowStart) / MILLISECONDS_PER_HOUR;
}

/** What is left of a share. */
export function rest(share: (played: Played) => Estimate): (played: Played) => Estimate {
  return (played) => {
    const { value, low, high, ...same } = share(played);
    return { ...same, value: 1 - value, low: 1 - high, high: 1 - low };
  };
}

/** A measure in another unit. */
export function times(measure: (played: Played) => Estimate, factor: number): (played: Played) => Estimate {
  return (played) => multiplied(measure(played), factor);
}

function multiplied({ value, low, high, ...same }: Estimate, factor: number): Estimate {
  return { ...same, value: value * factor, low: low * factor, high: high * factor };
}

function allJobs(played: Played): JobClass {
  return jobsOf(played, null);
}

function jobsOf({ results }: Played, part: string | null): JobClass {
  return found(
    results.jobs.find((one) => one.part === part && one.priority === 'all'),
    part ?? 'all jobs',
  );
}

function percentile(jobs: JobClass, share: number): Estimate {
  return given(jobs.percentiles.find((one) => one.share === share)?.longRun);
}

function queueOf({ results }: Played, name: string): Queue {
  return found(
    results.queues.find((queue) => queue.name === name),
    name,
  );
}

function stationOf({ results }: Played, group: string): StationUse {
  const [only, ...others] = results.stations.filter((station) => station.group === group);
  if (others.length > 0) throw new Error(`There are several stations "${group}".`);
  return found(only, group);
}

/** Milliseconds, one list for each replication. */
function waitsOf({ histories }: Played, queue: string): readonly Float64Array[] {
  return histories.map(({ queues }) => {
    const waits = queues.find((one) => one.name === queue)?.waits ?? undefined;
    return found(waits, queue);
  });
}

/** Mean over replications. */
export function meanOver(values: readonly number[]): Estimate {
  return given(estimateOver(values.length, () => meanInterval(values, LEVEL)));
}

/** Ratio of two means over replications. */
export function ratioOver(numerators: readonly number[], denominators: readonly number[]): Estimate {
  return given(estimateOver(numerators.length, () => ratioInterval(numerators, denominators, LEVEL)));
}

function found<T>(value: T | undefined, name: string): T {
  if (value === undefined) throw new Error(`The results say nothing of "${name}".`);
  return value;
}

function given(estimate: EstimateOrRefused | undefined): Estimate {
  if (estimate?.kind === 'estimate') return estimate;
  throw new Error(estimate?.reason ?? 'The results do not have this measure.');
}
