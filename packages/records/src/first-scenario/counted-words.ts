import { gammaQuantile } from '@buildweek/numbers';
import { clopperPearsonInterval, type Interval, mean, standardDeviation } from '@buildweek/statistics';
import type { MachineFacts } from '../facts/machine-groups.ts';
import type { PartFacts } from '../facts/part-facts.ts';
import type { LoggedJob, LoggedJobs, MachineRun } from '../logged-jobs.ts';
import type { LearnedWords, Sourced, SourcedChoice } from './learned-words.ts';

const WEEK = 7 * 86_400_000;
const HOUR = 3_600_000;
const LEVEL = 0.95;
/** Fewer measured times are no sample of what may happen. */
const FEWEST_TIMES = 10;
/** As many quantiles stand for a longer list of measured times. */
const MOST_TIMES = 20;

/**
 * What can be counted in a log, in the words of a scenario: rates and shares with exact intervals, and measured times
 * as they are.
 */
export function countedWords(
  { jobs, from, until }: LoggedJobs,
  runs: readonly MachineRun[],
  parts: readonly PartFacts[],
  machines: readonly MachineFacts[],
): LearnedWords {
  // A log of days cannot tell what a week is like, and must not be taken for a small part of one.
  const weeks = Math.max(1, (until - from) / WEEK);
  return {
    jobs: new Map(parts.map((part) => [part.name, jobsPerWeek(part.jobs, weeks)])),
    rush: new Map(
      parts
        .filter(({ rush }) => rush.told > 0)
        .map(({ name, rush }) => [name, shareWords(rush.rush, rush.told, '', 'jobs')]),
    ),
    when: null,
    weekVariation: null,
    prints: new Map(machines.flatMap((group) => printOf(group, runs))),
    fails: new Map(machines.flatMap((group) => failsOf(group, runs))),
    breakdowns: new Map(),
    stages: new Map(parts.map(({ name }) => [name, stagesOf(jobs.filter(({ part }) => part === name))])),
  };
}

/** Exact interval of a Poisson mean: F. Garwood, Biometrika 28 (1936), 437–442. */
function jobsPerWeek(count: number, weeks: number): Sourced {
  const tail = (1 - LEVEL) / 2;
  const low = count === 0 ? 0 : gammaQuantile(tail, count) / weeks;
  const high = gammaQuantile(1 - tail, count + 1) / weeks;
  return {
    value: `${short(count / weeks)} per week`,
    source: `${count} jobs in ${short(weeks)} ${weeks === 1 ? 'week' : 'weeks'}; 95 %: ${short(low)} to ${short(high)}`,
  };
}

function shareWords(counted: number, of: number, behind: string, what: string): Sourced {
  const { value, low, high }: Interval = clopperPearsonInterval(counted, of, LEVEL);
  return {
    value: `${short(100 * value)} %${behind}`,
    source: `${counted} of ${of} ${what}; 95 %: ${short(100 * low)} to ${short(100 * high)} %`,
  };
}

function failsOf({ name, machines }: MachineFacts, runs: readonly MachineRun[]): [string, Sourced][] {
  const ended = runs.filter(({ machine, outcome }) => machines.includes(machine) && outcome !== 'running');
  const told = ended.filter(({ outcome }) => outcome !== 'broke down');
  if (told.length === 0) return [];
  const failed = told.filter(({ outcome }) => outcome === 'failed').length;
  return [[name, shareWords(failed, told.length, ' of builds', 'runs')]];
}

function printOf({ name, machines }: MachineFacts, runs: readonly MachineRun[]): [string, SourcedChoice][] {
  const hours = runs
    .filter(({ machine, outcome, end }) => machines.includes(machine) && outcome === 'done' && end !== null)
    .map(({ start, end }) => ((end ?? start) - start) / HOUR);
  return hours.length < FEWEST_TIMES ? [] : [[name, measured(hours, 'h per build', 'runs')]];
}

function stagesOf(jobs: readonly LoggedJob[]): Map<string, SourcedChoice> {
  const perJob = new Map<string, number[]>();
  const perPiece = new Map<string, number[]>();
  const add = (times: Map<string, number[]>, stage: string, time: number): void => {
    const own = times.get(stage);
    if (own === undefined) times.set(stage, [time]);
    else own.push(time);
  };
  for (const { stages, quantity } of jobs) {
    for (const { name, start, end, isWork } of stages) {
      if (!isWork || start === null || end === null) continue;
      const minutes = (end - start) / 60_000;
      add(perJob, name, minutes);
      if (quantity !== null) add(perPiece, name, minutes / quantity);
    }
  }
  return new Map(
    [...perJob]
      .filter(([, times]) => times.length >= FEWEST_TIMES)
      .map(([stage, times]) => {
        const pieces = perPiece.get(stage) ?? [];
        const isByPiece = pieces.length >= 0.8 * times.length && variationOf(pieces) < variationOf(times);
        return [
          stage,
          isByPiece ? measured(pieces, 'min per part', 'jobs') : measured(times, 'min per job', 'jobs'),
        ];
      }),
  );
}

/** Standard deviation over the mean. */
function variationOf(times: readonly number[]): number {
  const centre = mean(times);
  return centre === 0 ? 0 : standardDeviation(times) / centre;
}

/** The values themselves, or quantiles of many. */
function measured(times: readonly number[], unit: string, what: string): SourcedChoice {
  const ascending = [...times].sort((a, b) => a - b);
  const shown =
    ascending.length <= MOST_TIMES
      ? ascending
      : Array.from(
          { length: MOST_TIMES },
          (_, index) => ascending[Math.floor(((index + 0.5) / MOST_TIMES) * ascending.length)] ?? 0,
        );
  if (ascending[0] === ascending.at(-1)) {
    return {
      value: `${short(ascending[0] ?? 0)} ${unit}`,
      source: `all of ${times.length} ${what}`,
      others: [],
    };
  }
  return {
    value: `measured ${shown.map(short).join(', ')} ${unit}`,
    source: `${times.length} ${what}${times.length > MOST_TIMES ? `, of which these are ${MOST_TIMES} quantiles` : ''}`,
    others: [],
  };
}

/** Three digits that mean something. */
function short(value: number): string {
  return String(Number(value.toPrecision(3)));
}
