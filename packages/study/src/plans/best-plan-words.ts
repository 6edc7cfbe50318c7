import {
  bareMoneyText,
  type Estimate,
  figureOf,
  type ShownPlan,
  WHOLE,
  writtenUnit,
} from '@buildweek/results';
import { shareWords } from '../words/figures.ts';
import { BEST_MEASURES, type BestMeasure } from './best-measures.ts';

/** What the sentences are made from. */
export interface BestFacts {
  readonly shown: readonly ShownPlan[];
  /** Plans within the budget. */
  readonly plans: number;
  /** Plans that nobody beat. */
  readonly left: number;
  readonly by: BestMeasure;
  readonly currency: string | null;
}

/** The best plan in a few sentences. */
export function bestHeadline(facts: BestFacts): string[] {
  const { shown, plans, left, by, currency } = facts;
  const { words, measure } = BEST_MEASURES[by];
  const best = shown[0];
  if (best === undefined) return [];
  const cost =
    best.committedCost === null
      ? ''
      : `, at ${bareMoneyText(best.committedCost, WHOLE)} ${currency ?? ''} a year`;
  const among =
    left > 1 ? `One of ${left} plans that cannot be told apart is ${best.name}` : `Take ${best.name}`;
  const today = shown.find(({ isToday }) => isToday);
  return [
    `${among}: of ${plans} plans within the budget it has ${words}, ${valueWords(best, measure, by)}${cost}.`,
    ...(today === undefined || today.name === best.name
      ? []
      : [`Today's plan, ${today.name}, has ${valueWords(today, measure, by)}.`]),
  ];
}

function valueWords(plan: ShownPlan, measure: string, by: BestMeasure): string {
  const value = plan.measures.find(({ name }) => name === measure)?.value;
  if (value?.kind !== 'estimate') return value?.reason ?? 'no figure';
  if (by === 'late') return `${shareWords(lateOf(value))} late`;
  const unit = writtenUnit('hours', [value.value], null);
  const { value: text, range } = figureOf(value, unit.size, unit.leastDecimals);
  return `${text} ${unit.many}${range === null ? '' : ` (${range.low} to ${range.high})`}`;
}

/** Jobs on time turned round. */
function lateOf({ value, low, high, ...rest }: Estimate): Estimate {
  return { ...rest, value: 1 - value, low: 1 - high, high: 1 - low };
}
