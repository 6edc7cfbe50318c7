import {
  clopperPearsonInterval,
  type Interval,
  mean,
  overdispersedRate,
  poissonRate,
  standardDeviation,
} from '@buildweek/statistics';
import type { MachineFacts } from '../facts/machine-groups.ts';
import type { PartFacts } from '../facts/part-facts.ts';
import type { ArrivalFacts } from '../learn/arrival-facts.ts';
import { durationWords } from '../learn/duration-words.ts';
import { spanText } from '../learn/week-blocks.ts';
import type { CivilTime, LoggedJob, LoggedJobs, MachineRun } from '../logged-jobs.ts';
import type { LearnedWords, Sourced, SourcedChoice } from './learned-words.ts';

const WEEK = 7 * 86_400_000;
const HOUR = 3_600_000;
const LEVEL = 0.95;
/** Of fewer times nothing can be said of what explains them. */
const FEWEST_FOR_SPREAD = 3;
/** Per cent; a scenario takes no more. */
const MOST_VARIATION = 200;
const WEEKS_PER_MONTH = 365.25 / 12 / 7;

/**
 * What can be counted in a log, in the words of a scenario: rates and shares with exact intervals, and measured times
 * by the laws that fit them.
 */
export function countedWords(
  { jobs, from, until }: LoggedJobs,
  runs: readonly MachineRun[],
  parts: readonly PartFacts[],
  machines: readonly MachineFacts[],
  arrivals: ArrivalFacts,
): LearnedWords {
  // A log of days cannot tell what a week is like, and must not be taken for a small part of one.
  const weeks = Math.max(1, (until - from) / WEEK);
  return {
    jobs: new Map(parts.map((part) => [part.name, jobsPerWeek(part.jobs, weeks, arrivals)])),
    growth: growthWords(arrivals),
    rush: new Map(
      parts
        .filter(({ rush }) => rush.told > 0)
        .map(({ name, rush }) => [name, shareWords(rush.rush, rush.told, '', 'jobs')]),
    ),
    when: whenWords(arrivals),
    weekVariation: variationWords(arrivals),
    prints: new Map(machines.flatMap((group) => printOf(group, runs, until))),
    fails: new Map(machines.flatMap((group) => failsOf(group, runs))),
    breakdowns: new Map(machines.flatMap((group) => breakdownsOf(group, runs, until))),
    stages: new Map(
      parts.map(({ name }) => [
        name,
        stagesOf(
          jobs.filter(({ part }) => part === name),
          until,
        ),
      ]),
    ),
  };
}

/**
 * Jobs a week at the end of the log: the mean of all weeks, or where there is a clear trend what it has come to. The
 * interval is exact, and wider where whole weeks differ beyond chance.
 */
function jobsPerWeek(count: number, weeks: number, { weekVariation, trend }: ArrivalFacts): Sourced {
  const { value, low, high } = overdispersedRate(count, weeks, weekVariation, LEVEL);
  const level = trend?.isClear === true ? trend.fitted.endOverMean : 1;
  const grown =
    level === 1 ? '' : `; ${short(value)} on average, by the trend ${short(value * level)} at the end`;
  return {
    value: `${short(value * level)} per week`,
    source: `${count} jobs in ${short(weeks)} ${weeks === 1 ? 'week' : 'weeks'}; 95 %: ${short(low * level)} to ${short(high * level)}${weekVariation === 0 ? '' : ', with what whole weeks differ'}${grown}`,
  };
}

/** The blocks of the week as weights, 1 being an average hour. */
function whenWords({ blocks }: ArrivalFacts): Sourced | null {
  if (blocks === null) return null;
  const jobs = blocks.reduce((sum, block) => sum + block.jobs, 0);
  const hours = blocks.reduce((sum, block) => sum + block.hours, 0);
  if (jobs === 0) return null;
  const mean = jobs / hours;
  const spans = blocks.flatMap(({ spans: own, rate }) => {
    const weight = Number((rate.value / mean).toFixed(2));
    return weight === 0 ? [] : own.map((span) => `${spanText(span)}: ${weight}`);
  });
  const told = blocks.map(({ name, jobs: own }) => `${name} ${own}`).join(', ');
  return {
    value: `{ ${spans.join(', ')} }`,
    source: `jobs: ${told}; weights drawn together where they are few`,
  };
}

function variationWords({ weekVariation, dispersion }: ArrivalFacts): Sourced | null {
  if (weekVariation === 0 || dispersion === null) return null;
  return {
    value: `${Math.min(MOST_VARIATION, Math.max(1, Math.round(100 * weekVariation)))} %`,
    source: `counts of whole weeks vary ${short(dispersion.index)} times as much as by chance, p ${pText(dispersion.pValue)}`,
  };
}

function growthWords({ trend, weekly }: ArrivalFacts): Sourced | null {
  if (trend?.isClear !== true) return null;
  const months = weekly.length / WEEKS_PER_MONTH;
  const perMonth = (log: number): string => short(100 * Math.expm1(log / months));
  const { value, low, high } = trend.fitted.growth;
  return {
    value: `${perMonth(value)} % per month`,
    source: `95 %: ${perMonth(low)} to ${perMonth(high)} %; Laplace's test, p ${pText(trend.pValue)}`,
  };
}

function pText(p: number): string {
  return p < 0.001 ? 'below 0.001' : String(Number(p.toPrecision(2)));
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

/** Runs that are still going on are at least as long as they have been. */
function printOf(
  { name, machines }: MachineFacts,
  runs: readonly MachineRun[],
  until: CivilTime,
): [string, SourcedChoice][] {
  const own = runs.filter(({ machine }) => machines.includes(machine));
  const values = own
    .filter(({ outcome, end }) => outcome === 'done' && end !== null)
    .map(({ start, end }) => ((end ?? start) - start) / HOUR);
  const censored = own.filter(({ end }) => end === null).map(({ start }) => (until - start) / HOUR);
  const words = durationWords({ values, censored }, 'h', 'per build', 'runs');
  return words === null ? [] : [[name, words]];
}

/** Breakdowns for each hour of running, also where there was none. */
function breakdownsOf(
  { name, machines }: MachineFacts,
  runs: readonly MachineRun[],
  until: CivilTime,
): [string, Sourced][] {
  const own = runs.filter(({ machine }) => machines.includes(machine));
  const hours = own.reduce((sum, { start, end }) => sum + ((end ?? until) - start) / HOUR, 0);
  if (!(hours > 0)) return [];
  const count = own.filter(({ outcome }) => outcome === 'broke down').length;
  const { low, high } = poissonRate(count, hours, LEVEL);
  const most = low === 0 ? '' : ` and no more seldom than every ${short(1 / low)} h`;
  return [
    [
      name,
      {
        value: count === 0 ? 'never seen' : `every ${short(hours / count)} h of running`,
        source: `${count} in ${short(hours)} h of running; 95 %: no more often than every ${short(1 / high)} h${most}`,
      },
    ],
  ];
}

/** Work that is still going on is at least as long as it has been. */
function stagesOf(jobs: readonly LoggedJob[], until: CivilTime): Map<string, SourcedChoice> {
  const byStage = new Map<string, StageTimes>();
  for (const { stages, quantity, isOpen } of jobs) {
    for (const { name, start, end, isWork } of stages) {
      if (!isWork || start === null || (end === null && !isOpen)) continue;
      const own = byStage.get(name) ?? new StageTimes();
      byStage.set(name, own);
      own.add(((end ?? until) - start) / 60_000, end === null, quantity);
    }
  }
  return new Map(
    [...byStage].flatMap(([stage, times]) => {
      const words = times.words();
      return words === null ? [] : [[stage, words] as const];
    }),
  );
}

/** Times of one stage, by the job and by the piece. */
class StageTimes {
  private readonly perJob = { values: [] as number[], censored: [] as number[] };
  private readonly perPiece = { values: [] as number[], censored: [] as number[] };

  add(minutes: number, isOpen: boolean, quantity: number | null): void {
    (isOpen ? this.perJob.censored : this.perJob.values).push(minutes);
    if (quantity !== null) (isOpen ? this.perPiece.censored : this.perPiece.values).push(minutes / quantity);
  }

  /** By the piece where nearly all jobs say how many they have, and this explains the times better. */
  words(): SourcedChoice | null {
    const { perJob, perPiece } = this;
    const isByPiece =
      perPiece.values.length >= FEWEST_FOR_SPREAD &&
      perPiece.values.length >= 0.8 * perJob.values.length &&
      variationOf(perPiece.values) < variationOf(perJob.values);
    return isByPiece
      ? durationWords(perPiece, 'min', 'per part', 'jobs')
      : durationWords(perJob, 'min', 'per job', 'jobs');
  }
}

/** Standard deviation over the mean. */
function variationOf(times: readonly number[]): number {
  const centre = mean(times);
  return centre === 0 ? 0 : standardDeviation(times) / centre;
}

/** Three digits that mean something. */
function short(value: number): string {
  return String(Number(value.toPrecision(3)));
}
