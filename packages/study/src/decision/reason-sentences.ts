import {
  bareMoneyText,
  type DecisionOption,
  figureOf,
  joinWords,
  type PlanPair,
  SPEED_MEASURE,
  type TargetOfPlan,
  WHOLE,
  writtenUnit,
} from '@buildweek/results';
import { shareWords } from '../words/figures.ts';

/** What the reasons for a proposal are made of. */
export interface ReasonFacts {
  readonly options: readonly DecisionOption[];
  readonly pairs: readonly PlanPair[];
  readonly currency: string | null;
}

/**
 * Why the recommended option and not another, from the very numbers that stand beside it: what it reaches, what the lab
 * as it is misses, what a saving would miss, and what more would bring.
 */
export function reasonSentences({ options, pairs, currency }: ReasonFacts): string[] {
  const of = (role: DecisionOption['role']): DecisionOption | undefined =>
    options.find((option) => option.role === role);
  const today = of('today');
  const answer = of('recommended') ?? today;
  if (answer === undefined) return [];
  const money = (amount: number): string =>
    `${bareMoneyText(Math.abs(amount), WHOLE)} ${currency ?? ''}`.trim();
  const beyond = ({ committedCost }: DecisionOption): number | null =>
    committedCost === null || answer.committedCost === null ? null : committedCost - answer.committedCost;
  return [
    reachedSentence(answer),
    ...(today === undefined || today === answer ? [] : [todaySentence(today, beyond(today), money)]),
    ...cheaperSentence(of('cheaper'), beyond, money),
    ...fasterSentence(of('faster'), answer, pairs, beyond, money),
  ];
}

function reachedSentence(answer: DecisionOption): string {
  const found = answer.targets.map(
    ({ target, value }) => `“${target}”: ${value.kind === 'estimate' ? shareWords(value) : value.reason}`,
  );
  const whose = answer.role === 'today' ? 'As it is the lab reaches' : 'The proposal reaches';
  return `${whose} ${joinWords(found)}.`;
}

function todaySentence(
  today: DecisionOption,
  less: number | null,
  money: (amount: number) => string,
): string {
  const cost =
    less === null || less === 0
      ? ''
      : `; the proposal costs ${money(less)} a year ${less < 0 ? 'more' : 'less'}, whatever the lab makes`;
  return `The lab as it is ${missedWords(today)}${cost}.`;
}

function cheaperSentence(
  cheaper: DecisionOption | undefined,
  beyond: (option: DecisionOption) => number | null,
  money: (amount: number) => string,
): string[] {
  const less = cheaper === undefined ? null : beyond(cheaper);
  if (cheaper === undefined || less === null || less >= 0) return [];
  return [`A plan that saves ${money(less)} a year, ${cheaper.name}, ${missedWords(cheaper)}.`];
}

function fasterSentence(
  faster: DecisionOption | undefined,
  answer: DecisionOption,
  pairs: readonly PlanPair[],
  beyond: (option: DecisionOption) => number | null,
  money: (amount: number) => string,
): string[] {
  if (faster === undefined) return [];
  const pair = pairs.find(({ plan, against }) => plan === faster.name && against === answer.name);
  const found = pair?.differences.find(({ measure }) => measure === SPEED_MEASURE);
  if (found?.outcome !== 'better' || found.difference.kind !== 'estimate') return [];
  const { value, low, high } = found.difference;
  const unit = writtenUnit('hours', [value], null);
  const gain = figureOf({ value: -value, low: -high, high: -low }, unit.size, unit.leastDecimals);
  const range = gain.range === null ? '' : ` (${gain.range.low} to ${gain.range.high})`;
  const more = beyond(faster);
  const cost = more === null ? '' : `, for ${money(more)} a year more`;
  return [
    `Most would be gained by ${faster.why}: nine of ten jobs ${gain.value} ${unit.many}${range} sooner${cost}.`,
  ];
}

/** "misses “on time at least 92 %”: 90 % (88 to 92)", the worst miss first. */
function missedWords({ targets }: DecisionOption): string {
  const missed = targets
    .filter((target) => target.value.kind === 'estimate' && surplus(target) < 0)
    .toSorted((one, other) => surplus(one) - surplus(other))
    .map(({ target, value }) => `“${target}”${value.kind === 'estimate' ? `: ${shareWords(value)}` : ''}`);
  return missed.length === 0 ? 'is not known to meet every target' : `misses ${joinWords(missed)}`;
}

function surplus({ value, asked, better }: TargetOfPlan): number {
  if (value.kind !== 'estimate') return 0;
  return better === 'lower' ? asked - value.value : value.value - asked;
}
