import type { Lab } from '@buildweek/model';
import type { AwayAnswer, AwayGroup, Band, Beside, EstimateOrRefused } from '@buildweek/results';
import { individualLevel } from '@buildweek/statistics';
import { measureDifference, measureEstimate } from '../plans/measure-estimates.ts';
import type { Observation, ObservedPlans } from '../plans/observed-plans.ts';
import { withLeave } from './add-leave.ts';
import { awaySentences } from './away-sentences.ts';
import { type ExtraJobs, mostNormal, NORMAL_BAND, recovery } from './recovery.ts';
import type { WeekSpan } from './week-measures.ts';

/** What becomes of a lab while one person is away. */
export interface AwayQuestion {
  readonly lab: Lab;
  /** Names of people groups of which one person is away, one group after the other. */
  readonly groups: readonly string[];
  /** First measured week of the absence, from 1. */
  readonly fromWeek: number;
  readonly awayWeeks: number;
  /** Measured weeks. */
  readonly weeks: number;
  readonly replications: number;
  readonly level: number;
}

/** What a study finds out of it. */
export type AwayFound = Pick<AwayAnswer, 'normalBand' | 'differencesLevel' | 'there' | 'groups' | 'verdict'>;

/** Before, during and after the absence; the plans are to have measures for these spans. */
export function spansOfAbsence({ fromWeek, awayWeeks, weeks }: AwayQuestion): WeekSpan[] {
  const from = fromWeek - 1;
  return [
    { from: 0, to: from },
    { from, to: from + awayWeeks },
    { from: from + awayWeeks, to: weeks },
  ];
}

/**
 * Plays the lab with one person of each group away in turn, beside the lab as stated, on common random numbers.
 *
 * @param plans with the measures of `weekMeasures` for the weeks and the spans of the question
 * @returns null when somebody stopped
 */
export async function awayStudy(question: AwayQuestion, plans: ObservedPlans): Promise<AwayFound | null> {
  const { lab, groups, replications, level, weeks } = question;
  const there = await plans.observe({ name: 'everybody there', lab }, replications);
  if (there === null) return null;
  const promises = lab.demand.some(({ due, rushDue }) => due.kind !== 'none' || rushDue.kind !== 'none');
  const differencesLevel = individualLevel(level, Math.max(1, groups.length * 3));
  const found: AwayGroup[] = [];
  for (const group of groups) {
    const plan = {
      name: `${group} away`,
      lab: withLeave(lab, group, question.fromWeek, question.awayWeeks),
    };
    const away = await plans.observe(plan, replications);
    if (away === null) return null;
    found.push(groupOf(group, question, there, away, promises, differencesLevel));
  }
  const jobsInLab = band(there, 0, weeks, level, Number.POSITIVE_INFINITY);
  const answer = {
    normalBand: NORMAL_BAND,
    differencesLevel,
    there: {
      jobsInLab,
      onTimeByWeek: promises ? band(there, weeks, weeks, level, 1) : null,
      most: jobsInLab.value.map(mostNormal),
    },
    groups: found,
  };
  return {
    ...answer,
    verdict: awaySentences(found, question.awayWeeks, weeks - question.fromWeek + 1 - question.awayWeeks),
  };
}

function groupOf(
  group: string,
  { lab, weeks, fromWeek, awayWeeks, level }: AwayQuestion,
  there: readonly Observation[],
  away: readonly Observation[],
  promises: boolean,
  differencesLevel: number,
): AwayGroup {
  const beside = (index: number): Beside => ({
    there: measureEstimate(there, index, level, 1),
    away: measureEstimate(away, index, level, 1),
    difference: measureDifference(there, away, index, differencesLevel).difference,
  });
  const usual = Array.from({ length: weeks }, (_, week) => estimated(measureEstimate(there, week, level)));
  const differences = usual.map((_, week) => measureDifference(there, away, week, level).difference);
  const extra = differences.map(
    (one): ExtraJobs => (one.kind === 'estimate' ? one : { value: 0, low: 0, high: 0 }),
  );
  const worst = extra.reduce((most, one, week) => (one.value > (extra[most]?.value ?? 0) ? week : most), 0);
  return {
    group,
    count: lab.people.find(({ name }) => name === group)?.count ?? 0,
    onTime: promises
      ? { before: beside(2 * weeks), during: beside(2 * weeks + 1), after: beside(2 * weeks + 2) }
      : null,
    recovery: recovery(usual, extra, fromWeek - 1 + awayWeeks),
    mostExtraJobs: differences[worst] ?? { kind: 'refused', reason: 'No week was measured.' },
    jobsInLab: band(away, 0, weeks, level, Number.POSITIVE_INFINITY),
    onTimeByWeek: promises ? band(away, weeks, weeks, level, 1) : null,
  };
}

/** Weeks one after the other; a week in which no such job comes has none that is late. */
function band(
  observations: readonly Observation[],
  first: number,
  weeks: number,
  level: number,
  most: number,
): Band {
  const points = Array.from({ length: weeks }, (_, week) => {
    const estimate = measureEstimate(observations, first + week, level);
    if (estimate.kind !== 'estimate') return { value: most, low: most, high: most };
    const { value, low, high } = estimate;
    return { value, low: Math.max(0, low), high: Math.min(most, high) };
  });
  return {
    value: points.map(({ value }) => value),
    low: points.map(({ low }) => low),
    high: points.map(({ high }) => high),
    level,
    replications: observations.length,
  };
}

function estimated(estimate: EstimateOrRefused): number {
  return estimate.kind === 'estimate' ? estimate.value : 0;
}
