import {
  bareMoneyText,
  CENTS,
  figureOf,
  moneyEstimateText,
  PIECE_COST_MEASURE,
  type ShownPlan,
  SPEED_MEASURE,
  type TargetOfPlan,
  WHOLE,
  writtenUnit,
} from '@buildweek/results';
import { shareWords } from '../words/figures.ts';

/** What the sentences are made from. */
export interface PlanFacts {
  readonly shown: readonly ShownPlan[];
  /** All plans, and how many of them are dearer than the answer and were not looked at. */
  readonly plans: number;
  readonly undecided: number;
  /** Where no plan is good enough: name of the one that comes closest to all its targets, if any was played. */
  readonly closest: string | null;
  /** Targets on the cost per part, by which the search does not go. */
  readonly leftOut: readonly string[];
  readonly currency: string | null;
}

/** The answer in a few sentences, the most important first. */
export function planHeadline(facts: PlanFacts): string[] {
  const chosen = facts.shown.find(({ role }) => role === 'chosen');
  return chosen === undefined ? noneSentences(facts) : foundSentences(chosen, facts);
}

function foundSentences(chosen: ShownPlan, facts: PlanFacts): string[] {
  const { shown, plans, undecided, currency } = facts;
  const targets = chosen.targets.map(targetWords);
  const meets = meetsWords(facts);
  const cheapest = undecided === 0 ? 'the cheapest' : 'the cheapest that could be confirmed';
  const what = chosen.isToday
    ? `Buy nothing: what is there today (${chosen.name}) is ${cheapest} of ${plans} plans that ${meets}`
    : `Take ${chosen.name}: ${cheapest} of ${plans} plans that ${meets}`;
  return [
    `${what}${costWords(chosen, currency)}.`,
    ...(targets.length === 0 ? [] : [`With it ${targets.join('; ')}.`]),
    ...leftOutSentence(chosen, facts),
    ...todaySentence(chosen, facts),
    ...cheaperSentence(chosen, shown, currency),
    ...moreSentence(shown, currency),
    ...(undecided === 0
      ? []
      : [
          `${undecided === 1 ? 'One cheaper plan' : `${undecided} cheaper plans`} could neither be ruled out nor confirmed.`,
        ]),
  ];
}

function meetsWords({ leftOut }: PlanFacts): string {
  return leftOut.length === 0 ? 'meets every target' : 'meets every target that the search goes by';
}

/** The search tests shares; what a piece costs is told beside them. */
function leftOutSentence({ measures }: ShownPlan, { leftOut, currency }: PlanFacts): string[] {
  if (leftOut.length === 0) return [];
  const cost = measures.find(({ name }) => name === PIECE_COST_MEASURE)?.value;
  const found =
    cost?.kind === 'estimate'
      ? `a finished piece costs ${moneyEstimateText(cost, currency ?? '', CENTS)}`
      : 'what a finished piece costs is not known';
  const targets = leftOut.map((wording) => `“${wording}”`).join(' and ');
  return [`The search does not go by ${targets}: with this plan ${found}.`];
}

function noneSentences({ shown, plans, undecided, closest }: PlanFacts): string[] {
  const best = shown.find(({ name }) => name === closest);
  // A plan that misses two targets is stopped at the first that is clear, which need not be the one it misses most.
  const failing = best?.targets
    .filter(({ value }) => value.kind === 'estimate')
    .toSorted((one, other) => shortfallOf(one) - shortfallOf(other))[0];
  const lead =
    undecided === 0
      ? `None of ${plans} plans in the range meets every target.`
      : `None of ${plans} plans could be confirmed to meet every target; ${undecided} could not be ruled out either.`;
  if (best === undefined || failing === undefined) return [lead];
  const found = failing.value.kind === 'estimate' ? ` reaches ${shareWords(failing.value)}` : '';
  return [
    lead,
    `“${failing.target}” is what fails: the plan that comes closest, ${best.name},${found}.`,
    ...widenSentence(shown, failing),
  ];
}

/** How far a target is from what it asks for; below 0 it is missed. */
function shortfallOf({ value, asked, better }: TargetOfPlan): number {
  if (value.kind !== 'estimate') return 0;
  return better === 'lower' ? asked - value.value : value.value - asked;
}

/** Which range to widen: that of what helps the failing target most. */
function widenSentence(shown: readonly ShownPlan[], failing: TargetOfPlan): string[] {
  const isAtMost = failing.better === 'lower';
  const helps = shown
    .filter(({ role }) => role === 'one more')
    .flatMap((plan) => {
      const value = plan.targets.find(({ target }) => target === failing.target)?.value;
      return value?.kind === 'estimate' ? [{ plan, value }] : [];
    })
    .sort((one, other) => (isAtMost ? -1 : 1) * (other.value.value - one.value.value));
  const [most] = helps;
  if (
    most === undefined ||
    failing.value.kind !== 'estimate' ||
    !(isAtMost ? most.value.high < failing.value.value : most.value.low > failing.value.value)
  ) {
    return ['One more of anything that may vary hardly helps it: look at the hours, or at the target.'];
  }
  const { low, high } = most.value;
  const isShort = isAtMost ? low > failing.asked : high < failing.asked;
  const still = isShort ? `, which is still ${isAtMost ? 'too much' : 'short'}` : '';
  return [
    `Widen the range of ${most.plan.why.replace('one more of ', '')} first: one more gives ${shareWords(most.value)}${still}.`,
  ];
}

function costWords({ committedCost, purchase, isToday }: ShownPlan, currency: string | null): string {
  if (committedCost === null) return '';
  const unit = currency ?? '';
  const amount = `${bareMoneyText(purchase ?? 0, WHOLE)} ${unit}`;
  const buy =
    purchase === null || purchase === 0
      ? 'nothing to buy'
      : isToday
        ? `with equipment for ${amount} that the scenario does not call owned`
        : `${amount} to buy`;
  return `, at ${bareMoneyText(committedCost, WHOLE)} ${unit} a year whatever it makes, ${buy}`;
}

function todaySentence(chosen: ShownPlan, { shown, currency }: PlanFacts): string[] {
  const today = shown.find(({ isToday }) => isToday);
  if (today === undefined || chosen.isToday) return [];
  const failing = today.targets.find(({ verdict }) => verdict === 'missed');
  const found = failing?.value.kind === 'estimate' ? `: ${shareWords(failing.value)}` : '';
  const why = today.verdict === 'missed' ? `${today.why}${found}` : today.why || 'is another';
  return [`Today's plan, ${today.name}, ${why}${extraCost(today, chosen, currency)}.`];
}

function extraCost(before: ShownPlan, after: ShownPlan, currency: string | null): string {
  if (before.committedCost === null || after.committedCost === null) return '';
  const more = after.committedCost - before.committedCost;
  return `; the answer costs ${bareMoneyText(Math.abs(more), WHOLE)} ${currency ?? ''} a year ${more >= 0 ? 'more' : 'less'}`;
}

function cheaperSentence(chosen: ShownPlan, shown: readonly ShownPlan[], currency: string | null): string[] {
  const most = chosen.committedCost ?? 0;
  const cheaper = shown.filter(
    ({ role, isToday, committedCost }) =>
      (role === 'near miss' || role === 'next below') &&
      !isToday &&
      committedCost !== null &&
      committedCost < most,
  );
  const [next] = [...cheaper].sort((one, other) => (other.committedCost ?? 0) - (one.committedCost ?? 0));
  if (next === undefined || next.committedCost === null || chosen.committedCost === null) return [];
  const failing = next.targets.find(({ verdict }) => verdict === 'missed');
  const found = failing?.value.kind === 'estimate' ? `: ${shareWords(failing.value)}` : '';
  const saved = bareMoneyText(chosen.committedCost - next.committedCost, WHOLE);
  return [`A plan that saves ${saved} ${currency ?? ''} a year, ${next.name}, ${next.why}${found}.`];
}

/** What one more of the thing that helps most would bring. */
function moreSentence(shown: readonly ShownPlan[], currency: string | null): string[] {
  const gains = shown
    .filter(({ role }) => role === 'one more')
    .flatMap((plan) => {
      const difference = plan.againstChosen.find(({ measure }) => measure === SPEED_MEASURE);
      return difference?.outcome === 'better' && difference.difference.kind === 'estimate'
        ? [{ plan, difference: difference.difference }]
        : [];
    })
    .sort((one, other) => one.difference.value - other.difference.value);
  const [most] = gains;
  if (most === undefined) {
    return shown.some(({ role }) => role === 'one more')
      ? ['One more of anything that may vary would not make nine of ten jobs noticeably faster.']
      : [];
  }
  const { value, low, high } = most.difference;
  const unit = writtenUnit('hours', [value], null);
  const gain = figureOf({ value: -value, low: -high, high: -low }, unit.size, unit.leastDecimals);
  const range = gain.range === null ? '' : ` (${gain.range.low} to ${gain.range.high})`;
  const chosen = shown.find(({ role }) => role === 'chosen');
  const cost =
    most.plan.committedCost === null || chosen?.committedCost == null
      ? ''
      : `, for ${bareMoneyText(most.plan.committedCost - chosen.committedCost, WHOLE)} ${currency ?? ''} more a year`;
  return [
    `Most would be gained by ${most.plan.why}: nine of ten jobs ${gain.value} ${unit.many}${range} sooner${cost}.`,
  ];
}

function targetWords({ target, value }: TargetOfPlan): string {
  return value.kind === 'estimate' ? `“${target}”: ${shareWords(value)}` : `“${target}”: ${value.reason}`;
}
