import type { Estimate, EstimateOrRefused, JobClass, Queue, StationUse } from '@buildweek/results';
import {
  estimateOver,
  type Moments,
  moments,
  pooledDeviationInterval,
  ratioInterval,
} from '@buildweek/statistics';
import type { Played } from './play.ts';

/** Where the measures of theory stand in the results of a scenario. Each throws when its measure is not there. */

const LEVEL = 0.95;

export const meanLeadTime = (played: Played): Estimate => given(allJobs(played).meanLeadTime);

export const deviationOfLeadTime = (played: Played): Estimate =>
  given(allJobs(played).standardDeviationOfLeadTime);

/** @param share 0.9 for the time that nine of ten jobs stay below */
export function leadTimePercentile(share: number): (played: Played) => Estimate {
  return (played) => percentile(allJobs(played), share);
}

/** The chance that a job is done within what is promised: a point of the distribution function of lead times. */
export const onTime = (played: Played): Estimate => given(allJobs(played).onTime);

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
export function stationShare(
  group: string,
  state: StationUse['states'][number]['state'],
): (played: Played) => Estimate {
  return (played) => given(stationOf(played, group).states.find((one) => one.state === state)?.share);
}

/** Mean size of the batches of the only station of a group. */
export function meanBatch(group: string): (played: Played) => Estimate {
  return (played) => {
    const capacity = played.lab.stations.find((station) => station.name === group)?.capacity;
    if (capacity === undefined) throw new Error(`There is no station "${group}".`);
    return times(given(stationOf(played, group).meanFill), capacity);
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

/** Hours per job that a step waits, whatever for. */
export function waitOfStep(stage: string, phase: string): (played: Played) => Estimate {
  return ({ results }) => {
    const step = results.hours[0]?.steps.find((one) => one.stage === stage && one.phase === phase);
    const [wait, ...others] = step?.waits ?? [];
    if (others.length > 0) throw new Error(`"${stage}" waits for several causes.`);
    return given(wait?.hours);
  };
}

/** Standard deviation of the single waits; `Results` has none, so it is taken from the histories. */
export function deviationOfWait(queue: string): (played: Played) => Estimate {
  return (played) => {
    const each: Moments[] = waitsOf(played, queue).map(moments);
    return given(estimateOver(each.length, () => pooledDeviationInterval(each, LEVEL)));
  };
}

/** Share of visits that wait at most so long; from the histories as well. */
export function waitsWithin(queue: string, hours: number): (played: Played) => Estimate {
  return (played) => {
    const waits = waitsOf(played, queue);
    const within = waits.map((each) => each.filter((wait) => wait <= hours).length);
    const visits = waits.map((each) => each.length);
    return given(estimateOver(waits.length, () => ratioInterval(within, visits, LEVEL)));
  };
}

/** What is left of a share. */
export function rest(share: (played: Played) => Estimate): (played: Played) => Estimate {
  return (played) => {
    const { value, low, high, ...same } = share(played);
    return { ...same, value: 1 - value, low: 1 - high, high: 1 - low };
  };
}

function times({ value, low, high, ...same }: Estimate, factor: number): Estimate {
  return { ...same, value: value * factor, low: low * factor, high: high * factor };
}

function allJobs({ results }: Played): JobClass {
  return found(
    results.jobs.find((one) => one.part === null && one.priority === 'all'),
    'jobs',
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

function waitsOf({ waits }: Played, queue: string): readonly Float64Array[] {
  return found(waits.get(queue), queue);
}

function found<T>(value: T | undefined, name: string): T {
  if (value === undefined) throw new Error(`The results say nothing of "${name}".`);
  return value;
}

function given(estimate: EstimateOrRefused | undefined): Estimate {
  if (estimate?.kind === 'estimate') return estimate;
  throw new Error(estimate?.reason ?? 'The results do not have this measure.');
}
