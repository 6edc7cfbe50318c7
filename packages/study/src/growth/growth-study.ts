import type { BudgetTarget, Economics, Lab } from '@buildweek/model';
import type { GrowthAnswer, GrowthMonth, GrowthPurchase, GrowthStep } from '@buildweek/results';
import { individualLevel } from '@buildweek/statistics';
import { measureDifference } from '../plans/measure-estimates.ts';
import type { Observation, ObservedPlans } from '../plans/observed-plans.ts';
import { askedShare } from '../plans/target-measures.ts';
import { targetMeasureIndex } from '../targets/judged-targets.ts';
import { knownCost } from '../targets/known-budget.ts';
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
  /** Known beforehand, and never missed by growth, but by what is bought. */
  readonly budgets: readonly BudgetTarget[];
}

/** What a study finds out of it. */
export type GrowthFound = Pick<
  GrowthAnswer,
  'targets' | 'months' | 'horizon' | 'neededIn' | 'steps' | 'purchases' | 'verdict'
>;

/** When all targets have been missed in so many months one after the other, those behind tell nothing new. */
const MISSED_MONTHS = 3;
/** Further ahead than so many purchases nobody plans from one forecast. */
const MOST_PURCHASES = 4;

/**
 * Plays the lab at the demand of each month, looks for the first in which a target is missed, and tries one more of
 * each group in that month; what restores the targets is played through the months behind it until it fails too. From
 * there it looks for what to buy next.
 *
 * @param expect told how many replications there will be, as far as that is known; it may end sooner
 * @returns null when somebody stopped
 */
export async function growthStudy(
  question: GrowthQuestion,
  plans: ObservedPlans,
  expect: (total: number) => void,
): Promise<GrowthFound | null> {
  const { targets, months: horizon, replications, lab, economics, leadWeeks } = question;
  const possible = possibleSteps(lab, economics, leadWeeks);
  // Months as they are, trials, and months with purchases: what restores late, or fails soon, ends sooner.
  const foreseen = (horizon + 1 + possible.length + horizon) * replications;
  const expectAtLeast = (total: number): void => expect(Math.max(total, foreseen));
  expectAtLeast(0);
  const months: GrowthMonth[] = [];
  const played: (readonly Observation[])[] = [];
  for (let month = 0; month <= horizon; month++) {
    const observations = await observe(question, plans, [], month);
    if (observations === null) return null;
    played.push(observations);
    months.push(monthOf(question, month, observations));
    const latest = months.slice(-MISSED_MONTHS);
    if (latest.length === MISSED_MONTHS && latest.every(({ targets: found }) => areAllMissed(found))) break;
  }
  const neededIn = months.find(({ targets: found }) => isMissed(found))?.month ?? null;
  const steps: GrowthStep[] = [];
  if (neededIn !== null) {
    const before = played[neededIn] ?? [];
    for (const step of possible) {
      const found = await tryStep(question, plans, step, neededIn, before, possible.length);
      if (found === null) return null;
      steps.push(found);
    }
    for (const [index, step] of steps.entries()) {
      if (step.restores === 'no') continue;
      const followed = await follow(
        question,
        plans,
        [possible[index] as PossibleStep],
        step.months,
        expectAtLeast,
      );
      if (followed === null) return null;
      steps[index] = { ...step, ...followed };
    }
  }
  const ordered = inOrder(steps);
  const purchases = await purchasesOf(question, plans, possible, ordered, neededIn ?? 0, expectAtLeast);
  if (purchases === null) return null;
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
    steps: ordered,
    purchases,
  };
  return { ...found, verdict: growthSentences(found, lab.startDate, question.level) };
}

const ORDER = ['yes', 'not decided', 'no'] as const;

/** What restores the targets first, within budgets before beyond them; then the cheapest, and without costs what gains most. */
function inOrder(steps: readonly GrowthStep[]): GrowthStep[] {
  const gain = ({ gain: found }: GrowthStep): number => (found.kind === 'estimate' ? found.value : 0);
  const cost = ({ perYear }: GrowthStep): number => perYear ?? Number.MAX_VALUE;
  return [...steps].sort(
    (one, other) =>
      ORDER.indexOf(one.restores) - ORDER.indexOf(other.restores) ||
      one.overBudget.length - other.overBudget.length ||
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
  bought: readonly PossibleStep[],
  month: number,
): Promise<readonly Observation[] | null> {
  const level = labInMonth(lab, growthPerMonth, month);
  const names = bought.map(({ name }) => name).join(' and ');
  const plan =
    bought.length === 0
      ? { name: `month ${month}`, lab: level }
      : { name: `month ${month} with ${names}`, lab: withAll(level, bought) };
  return plans.observe(plan, replications);
}

function withAll(lab: Lab, bought: readonly PossibleStep[]): Lab {
  return bought.reduce((before, step) => step.apply(before), lab);
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
  const observations = await observe(question, plans, [step], month);
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
  return {
    ...toldOf(question, [step], month),
    targets: found.targets,
    gain: difference,
    restores: restoring(found.targets),
    holdsUntil: null,
    months: [found],
  };
}

function restoring(targets: GrowthMonth['targets']): GrowthStep['restores'] {
  if (isMissed(targets)) return 'no';
  return targets.every(({ verdict }) => verdict === 'met') ? 'yes' : 'not decided';
}

/** What is known without playing of the last of what is bought, when it has to work in a month. */
function toldOf({ lab, budgets, economics }: GrowthQuestion, bought: readonly PossibleStep[], month: number) {
  const { apply: _, ...told } = bought.at(-1) as PossibleStep;
  const orderBy = orderDate(lab.startDate, month, told.leadWeeks);
  const broken =
    economics === null
      ? []
      : budgets.filter((budget) => knownCost(withAll(lab, bought), budget, economics) > budget.atMost);
  return {
    ...told,
    orderBy,
    isLate: orderBy < lab.startDate,
    overBudget: broken.map(({ wording }) => wording),
  };
}

/**
 * One purchase after the other: the first step, and whenever a target is missed again what restores it. What gained in
 * the first trial is tried first, the cheapest of it before the rest; the first that does not miss is taken.
 *
 * @param steps as they were tried alone, the best first
 * @returns null when somebody stopped
 */
async function purchasesOf(
  question: GrowthQuestion,
  plans: ObservedPlans,
  possible: readonly PossibleStep[],
  steps: readonly GrowthStep[],
  neededIn: number,
  expect: (total: number) => void,
): Promise<GrowthPurchase[] | null> {
  const [first] = steps;
  if (first === undefined || first.restores === 'no') return [];
  const { targets: _, gain: __, ...alone } = first;
  const purchases: GrowthPurchase[] = [{ ...alone, month: neededIn }];
  const bought = possible.filter(({ name }) => name === first.name);
  const gains = (step: PossibleStep): boolean => {
    const gain = steps.find(({ name }) => name === step.name)?.gain;
    return gain?.kind === 'estimate' && gain.low > 0;
  };
  const inTurn = [...possible.filter(gains), ...possible.filter((step) => !gains(step))];
  for (;;) {
    const month = (purchases.at(-1)?.holdsUntil ?? question.months) + 1;
    if (month > question.months || purchases.length === MOST_PURCHASES) return purchases;
    let next: GrowthPurchase | null = null;
    for (const step of inTurn) {
      expect(plans.replications + question.replications);
      const observations = await observe(question, plans, [...bought, step], month);
      if (observations === null) return null;
      const found = monthOf(question, month, observations);
      const restores = restoring(found.targets);
      if (restores === 'no') continue;
      bought.push(step);
      const followed = await follow(question, plans, bought, [found], expect);
      if (followed === null) return null;
      next = { ...toldOf(question, bought, month), month, restores, ...followed };
      break;
    }
    if (next === null) return purchases;
    purchases.push(next);
  }
}

/** Goes on through the months with what restores the targets, until one is missed again. */
async function follow(
  question: GrowthQuestion,
  plans: ObservedPlans,
  bought: readonly PossibleStep[],
  tried: readonly GrowthMonth[],
  expect: (total: number) => void,
): Promise<Pick<GrowthStep, 'months' | 'holdsUntil'> | null> {
  const months = [...tried];
  const [first] = months;
  let holdsUntil = first?.month ?? 0;
  for (let month = holdsUntil + 1; month <= question.months; month++) {
    expect(plans.replications + question.replications);
    const observations = await observe(question, plans, bought, month);
    if (observations === null) return null;
    const found = monthOf(question, month, observations);
    months.push(found);
    if (isMissed(found.targets)) break;
    holdsUntil = month;
  }
  return { months, holdsUntil };
}
