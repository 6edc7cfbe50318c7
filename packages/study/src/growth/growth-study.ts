import type { Economics, Lab } from '@buildweek/model';
import type { GrowthAnswer, GrowthMonth, GrowthStep } from '@buildweek/results';
import { individualLevel } from '@buildweek/statistics';
import { measureDifference } from '../plans/measure-estimates.ts';
import type { Observation, ObservedPlans } from '../plans/observed-plans.ts';
import { askedShare } from '../plans/target-measures.ts';
import { targetMeasureIndex } from '../targets/judged-targets.ts';
import type { ObservedTarget } from '../targets/observation.ts';
import { growthSentences } from './growth-sentences.ts';
import { judgeTargets } from './judge-targets.ts';
import { demandInMonth, labInMonth } from './level-of-month.ts';
import { monthLabel, orderDate } from './plan-dates.ts';
import { type PossibleStep, possibleSteps } from './possible-steps.ts';

/** What becomes of a lab whose demand grows. */
export interface GrowthQuestion {
  readonly lab: Lab;
  /** Whose measures come first among those of the plans. */
  readonly targets: readonly ObservedTarget[];
  /** Compound growth of all demand per month; null: of each as the scenario states it. */
  readonly growthPerMonth: number | null;
  readonly months: number;
  readonly replications: number;
  readonly level: number;
  readonly economics: Economics | null;
  /** From an order until it works, weeks, where the economics do not say it. */
  readonly leadWeeks: number;
}

/** What a study finds out of it. */
export type GrowthFound = Pick<
  GrowthAnswer,
  'targets' | 'months' | 'horizon' | 'neededIn' | 'steps' | 'verdict'
>;

/** When all targets have been missed in so many months one after the other, those behind tell nothing new. */
const MISSED_MONTHS = 3;

/**
 * Plays the lab at the demand of each month, looks for the first in which a target is missed, and tries one more of
 * each group in that month; what restores the targets is played through the months behind it until it fails too.
 *
 * @param expect told how many replications there will be, as far as that is known
 * @returns null when somebody stopped
 */
export async function growthStudy(
  question: GrowthQuestion,
  plans: ObservedPlans,
  expect: (total: number) => void,
): Promise<GrowthFound | null> {
  const { targets, months: horizon, replications, lab, economics, leadWeeks } = question;
  const possible = possibleSteps(lab, economics, leadWeeks);
  expect((horizon + 1) * replications);
  const months: GrowthMonth[] = [];
  const played: (readonly Observation[])[] = [];
  for (let month = 0; month <= horizon; month++) {
    const observations = await observe(question, plans, null, month);
    if (observations === null) return null;
    played.push(observations);
    months.push(monthOf(question, month, observations));
    const latest = months.slice(-MISSED_MONTHS);
    if (latest.length === MISSED_MONTHS && latest.every(({ targets: found }) => areAllMissed(found))) break;
  }
  const neededIn = months.find(({ targets: found }) => isMissed(found))?.month ?? null;
  const steps: GrowthStep[] = [];
  if (neededIn !== null) {
    expect(plans.replications + possible.length * replications);
    const before = played[neededIn] ?? [];
    for (const step of possible) {
      const found = await tryStep(question, plans, step, neededIn, before, possible.length);
      if (found === null) return null;
      steps.push(found);
    }
    for (const [index, step] of steps.entries()) {
      if (step.restores === 'no') continue;
      const followed = await follow(question, plans, possible[index] as PossibleStep, step, expect);
      if (followed === null) return null;
      steps[index] = followed;
    }
  }
  const found = {
    targets: targets.map((target, position) => {
      const firstMissed =
        months.find(({ targets: ofMonth }) => ofMonth[position]?.verdict === 'missed')?.month ?? null;
      const before = months.slice(0, firstMissed ?? months.length);
      const lastMet = before.findLast(({ targets: ofMonth }) => ofMonth[position]?.verdict === 'met');
      return {
        wording: target.wording,
        asked: askedShare(target),
        atMost: target.kind === 'busy',
        firstMissed,
        lastMet: lastMet?.month ?? null,
      };
    }),
    months,
    horizon,
    neededIn,
    steps: inOrder(steps),
  };
  return { ...found, verdict: growthSentences(found, lab.startDate) };
}

const ORDER = ['yes', 'not decided', 'no'] as const;

/** What restores the targets first; within that the cheapest, and without costs what gains most. */
function inOrder(steps: readonly GrowthStep[]): GrowthStep[] {
  const gain = ({ gain: found }: GrowthStep): number => (found.kind === 'estimate' ? found.value : 0);
  const cost = ({ perYear }: GrowthStep): number => perYear ?? Number.MAX_VALUE;
  return [...steps].sort(
    (one, other) =>
      ORDER.indexOf(one.restores) - ORDER.indexOf(other.restores) ||
      cost(one) - cost(other) ||
      gain(other) - gain(one),
  );
}

function isMissed(targets: GrowthMonth['targets']): boolean {
  return targets.some(({ verdict }) => verdict === 'missed');
}

function areAllMissed(targets: GrowthMonth['targets']): boolean {
  return targets.every(({ verdict }) => verdict === 'missed');
}

function observe(
  { lab, growthPerMonth, replications }: GrowthQuestion,
  plans: ObservedPlans,
  step: PossibleStep | null,
  month: number,
): Promise<readonly Observation[] | null> {
  const level = labInMonth(lab, growthPerMonth, month);
  const plan =
    step === null
      ? { name: `month ${month}`, lab: level }
      : { name: `month ${month} with ${step.name}`, lab: step.apply(level) };
  return plans.observe(plan, replications);
}

function monthOf(
  { lab, growthPerMonth, targets, level }: GrowthQuestion,
  month: number,
  observations: readonly Observation[],
): GrowthMonth {
  return {
    month,
    label: monthLabel(lab.startDate, month),
    demand: demandInMonth(lab, growthPerMonth, month),
    targets: judgeTargets(targets, observations, level),
  };
}

async function tryStep(
  question: GrowthQuestion,
  plans: ObservedPlans,
  step: PossibleStep,
  month: number,
  before: readonly Observation[],
  looked: number,
): Promise<GrowthStep | null> {
  const observations = await observe(question, plans, step, month);
  if (observations === null) return null;
  const found = monthOf(question, month, observations);
  const today = judgeTargets(question.targets, before, question.level);
  const first = today.findIndex(({ verdict }) => verdict === 'missed');
  const { difference } = measureDifference(
    before,
    observations,
    targetMeasureIndex(first, 'share'),
    individualLevel(question.level, looked),
  );
  const { apply: _, ...told } = step;
  const orderBy = orderDate(question.lab.startDate, month, step.leadWeeks);
  return {
    ...told,
    targets: found.targets,
    gain: difference,
    restores: isMissed(found.targets)
      ? 'no'
      : found.targets.every(({ verdict }) => verdict === 'met')
        ? 'yes'
        : 'not decided',
    holdsUntil: null,
    orderBy,
    isLate: orderBy < question.lab.startDate,
    months: [found],
  };
}

/** Goes on through the months with a step that restores the targets, until one is missed again. */
async function follow(
  question: GrowthQuestion,
  plans: ObservedPlans,
  step: PossibleStep,
  tried: GrowthStep,
  expect: (total: number) => void,
): Promise<GrowthStep | null> {
  const months = [...tried.months];
  const [first] = months;
  let holdsUntil = first?.month ?? 0;
  for (let month = holdsUntil + 1; month <= question.months; month++) {
    expect(plans.replications + question.replications);
    const observations = await observe(question, plans, step, month);
    if (observations === null) return null;
    const found = monthOf(question, month, observations);
    months.push(found);
    if (isMissed(found.targets)) break;
    holdsUntil = month;
  }
  return { ...tried, months, holdsUntil };
}
