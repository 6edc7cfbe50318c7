import { incompleteGamma } from '@buildweek/numbers';
import type { LearnedAnswer, LearnedDuration, LearnedRate } from '@buildweek/results';
import {
  clopperPearsonInterval,
  type DurationFit,
  fitDurations,
  type Interval,
  poissonRate,
  quantileOfLaw,
} from '@buildweek/statistics';
import type { MachineFacts } from '../facts/machine-groups.ts';
import type { LoggedJobs, MachineRun } from '../logged-jobs.ts';
import type { ArrivalFacts } from './arrival-facts.ts';
import { arrivalTests } from './arrival-tests.ts';
import { type DurationSample, printSamples, workSamples } from './duration-samples.ts';
import { FITTED_FAMILIES } from './duration-words.ts';
import type { WeekSpan } from './week-blocks.ts';

const HOUR = 3_600_000;
const LEVEL = 0.95;
/** Points of a curve. */
const POINTS = 40;

/** What was learned, in numbers: for tables, charts and other programs. */
export type LearnedFigures = Pick<
  LearnedAnswer,
  'level' | 'weeks' | 'blocks' | 'tests' | 'durations' | 'failures' | 'breakdowns'
>;

export function learnedFigures(
  { jobs, until }: LoggedJobs,
  runs: readonly MachineRun[],
  machines: readonly MachineFacts[],
  arrivals: ArrivalFacts,
): LearnedFigures {
  const samples = [...printSamples(machines, runs, jobs, until), ...workSamples(jobs, until)];
  return {
    level: LEVEL,
    weeks: weeksOf(arrivals),
    blocks:
      arrivals.blocks?.map(({ name, spans, jobs: counted, rate }) => ({
        name,
        spans: spans.flatMap(hoursOfWeek),
        jobs: counted,
        perHour: plain(rate),
      })) ?? null,
    tests: arrivalTests(arrivals),
    durations: samples.flatMap(durationOf),
    failures: machines.flatMap((group) => failuresOf(group, runs)),
    breakdowns: machines.flatMap((group) => breakdownsOf(group, runs, until)),
  };
}

function weeksOf({ weekly, firstMonday, dispersion, weekVariation }: ArrivalFacts): LearnedAnswer['weeks'] {
  const mean = weekly.length === 0 ? 0 : weekly.reduce((sum, count) => sum + count, 0) / weekly.length;
  const tail = (1 - LEVEL) / 2;
  return {
    firstDay: new Date(firstMonday).toISOString().slice(0, 10),
    counts: [...weekly],
    mean,
    low: poissonQuantile(tail, mean),
    high: poissonQuantile(1 - tail, mean),
    dispersion: dispersion === null ? null : { index: dispersion.index, pValue: dispersion.pValue },
    variation: weekVariation,
  };
}

/** The smallest count that a Poisson count does not exceed with at least this probability. */
function poissonQuantile(probability: number, mean: number): number {
  if (mean === 0) return 0;
  let count = Math.max(0, Math.floor(mean - 10 * Math.sqrt(mean)));
  // The chance of at most k is the upper regularized gamma function of k + 1 at the mean.
  while (incompleteGamma(count + 1, mean).upper < probability) count++;
  return count;
}

/** A span of days as hours from Monday midnight, one for each day. */
function hoursOfWeek({ fromDay, toDay, fromHour, toHour }: WeekSpan): { fromHour: number; toHour: number }[] {
  return Array.from({ length: toDay - fromDay + 1 }, (_, index) => {
    const day = 24 * (fromDay + index);
    return { fromHour: day + fromHour, toHour: day + toHour };
  });
}

function durationOf({ of, stage, unit, per, sample }: DurationSample): LearnedDuration[] {
  if (sample.values.length === 0) return [];
  const ascending = [...sample.values].sort((a, b) => a - b);
  const found = fitDurations(sample, FITTED_FAMILIES, LEVEL);
  return [
    {
      of,
      stage,
      unit,
      per,
      seen: found.seen,
      censored: found.censored,
      quantiles: curve((share) => ascending[Math.floor(share * ascending.length)] ?? 0),
      families: found.kind === 'range' ? [] : found.fits.map(familyOf),
      warning: found.kind === 'range' ? found.warning : null,
    },
  ];
}

function familyOf({ law, aic, mean, p95, isAboutAsGood }: DurationFit): LearnedDuration['families'][number] {
  return {
    name: law.family,
    aic,
    mean: plain(mean),
    p95,
    isAboutAsGood,
    curve: curve((share) => quantileOfLaw(law, share)),
  };
}

function curve(at: (share: number) => number): LearnedDuration['quantiles'] {
  return Array.from({ length: POINTS }, (_, index) => {
    const share = (index + 0.5) / POINTS;
    return { share, time: at(share) };
  });
}

function failuresOf({ name, machines }: MachineFacts, runs: readonly MachineRun[]): LearnedRate[] {
  const told = runs.filter(
    ({ machine, outcome }) => machines.includes(machine) && (outcome === 'done' || outcome === 'failed'),
  );
  const counted = told.filter(({ outcome }) => outcome === 'failed').length;
  if (told.length === 0) return [];
  const estimate = plain(clopperPearsonInterval(counted, told.length, LEVEL));
  return [{ of: name, counted, among: told.length, estimate }];
}

function breakdownsOf(
  { name, machines }: MachineFacts,
  runs: readonly MachineRun[],
  until: number,
): LearnedRate[] {
  const own = runs.filter(({ machine }) => machines.includes(machine));
  const hours = own.reduce((sum, { start, end }) => sum + ((end ?? until) - start) / HOUR, 0);
  if (!(hours > 0)) return [];
  const counted = own.filter(({ outcome }) => outcome === 'broke down').length;
  return [{ of: name, counted, among: hours, estimate: plain(poissonRate(counted, hours, LEVEL)) }];
}

function plain({ value, low, high }: Interval): LearnedRate['estimate'] {
  return { value, low, high };
}
