import {
  clopperPearsonInterval,
  type ExponentialTrend,
  type Interval,
  overdispersedRate,
  poissonRate,
} from '@buildweek/statistics';
import type { MachineFacts } from '../facts/machine-groups.ts';
import type { PartFacts } from '../facts/part-facts.ts';
import type { ArrivalFacts } from '../learn/arrival-facts.ts';
import { type DurationSample, printSamples, workSamples } from '../learn/duration-samples.ts';
import { durationWords } from '../learn/duration-words.ts';
import { spanText } from '../learn/week-blocks.ts';
import type { CivilTime, LoggedJobs, MachineRun } from '../logged-jobs.ts';
import type { LearnedWords, Sourced, SourcedChoice } from './learned-words.ts';

const WEEK = 7 * 86_400_000;
const HOUR = 3_600_000;
const LEVEL = 0.95;
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
  const prints = printSamples(machines, runs, jobs, until);
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
    prints: printWords(prints.filter(({ isPart }) => !isPart)),
    partPrints: printWords(prints.filter(({ isPart }) => isPart)),
    fails: new Map(machines.flatMap((group) => failsOf(group, runs))),
    breakdowns: new Map(machines.flatMap((group) => breakdownsOf(group, runs, until))),
    stages: stageWords(workSamples(jobs, until)),
  };
}

/**
 * Jobs a week at the end of the log: the mean of all weeks, or where there is a clear trend what it has come to. The
 * interval is exact, and wider where whole weeks differ beyond chance.
 */
function jobsPerWeek(count: number, weeks: number, { allowedVariation, trend }: ArrivalFacts): Sourced {
  const { value, low, high } = overdispersedRate(count, weeks, allowedVariation, LEVEL);
  const now = trend?.isClear === true ? atTheEnd({ value, low, high }, trend.fitted) : { value, low, high };
  const grown =
    now.value === value ? '' : `; ${short(value)} on average, by the trend ${short(now.value)} at the end`;
  return {
    value: `${short(now.value)} per week`,
    source: `${count} jobs in ${short(weeks)} ${weeks === 1 ? 'week' : 'weeks'}; 95 %: ${short(now.low)} to ${short(now.high)}${allowedVariation === 0 ? '' : ', allowing for what whole weeks differ'}${grown}`,
  };
}

type Limits = Pick<Interval, 'value' | 'low' | 'high'>;

/** What a rate has come to at the end of a trend. How many jobs there were tells nothing of when, so doubts of both add as squares. */
function atTheEnd(rate: Limits, { endOverMean }: ExponentialTrend): Limits {
  const value = rate.value * endOverMean.value;
  const apart = (rateTimes: number, trendTimes: number): number =>
    rateTimes === 0 ? 0 : Math.exp(Math.hypot(Math.log(rateTimes), Math.log(trendTimes)));
  const below = apart(rate.low / rate.value, endOverMean.low / endOverMean.value);
  return {
    value,
    low: below === 0 ? 0 : value / below,
    high: value * apart(rate.high / rate.value, endOverMean.high / endOverMean.value),
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

/** Prints by group of machines or by part, with the laws that fit. */
function printWords(samples: readonly DurationSample[]): Map<string, SourcedChoice> {
  return new Map(
    samples.flatMap((one) => {
      const words = wordsOf(one, 'runs');
      return words === null ? [] : [[one.of, words] as const];
    }),
  );
}

/** Work by part and stage. */
function stageWords(samples: readonly DurationSample[]): Map<string, Map<string, SourcedChoice>> {
  const byPart = new Map<string, Map<string, SourcedChoice>>();
  for (const one of samples) {
    const words = wordsOf(one, 'jobs');
    if (words === null) continue;
    const stages = byPart.get(one.of) ?? new Map<string, SourcedChoice>();
    byPart.set(one.of, stages.set(one.stage, words));
  }
  return byPart;
}

function wordsOf({ sample, unit, per }: DurationSample, what: string): SourcedChoice | null {
  return durationWords(sample, unit, `per ${per}`, what);
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

/** Three digits that mean something. */
function short(value: number): string {
  return String(Number(value.toPrecision(3)));
}
