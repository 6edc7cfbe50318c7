import {
  type BusinessCase,
  CENTS,
  type CostKind,
  type Estimate,
  type Money,
  moneyEstimateText,
  moneyText,
  WHOLE,
} from '@buildweek/results';
import { bareDurationWords, percent, percentOf, shareWords } from './figures.ts';

/** What the lab costs, and what it is worth against sending everything out; nothing when nobody speaks of money. */
export function moneySentences(money: Money | null): string[] {
  if (money === null) return [];
  return [...costSentence(money), ...caseSentence(money.case, money)];
}

const KIND_WORDS: Readonly<Record<CostKind, string>> = {
  equipment: 'the purchase of machines and stations',
  upkeep: 'upkeep of machines and stations',
  people: 'people',
  overtime: 'overtime',
  material: 'material',
  outside: 'work sent out',
  other: 'other costs',
};

function costSentence({ currency, total, costs }: Money): string[] {
  if (total.perPart.kind !== 'estimate') return [];
  const [most] = [...costs].sort((one, other) => other.perYear.value - one.perYear.value);
  const mostly =
    most === undefined
      ? ''
      : ` ${percent(most.perYear.value / total.perYear.value)} % of that is ${KIND_WORDS[most.kind]}.`;
  return [
    `A finished part costs ${moneyEstimateText(total.perPart, currency, CENTS)}, and the lab ${moneyEstimateText(total.perYear, currency, WHOLE)} a year.${mostly}`,
  ];
}

function caseSentence(found: BusinessCase, { currency, purchases }: Money): string[] {
  if (found.kind !== 'compared') return [];
  const { savedPerYear: saved, outsidePerYear, netPresentValue: worth, years, interest } = found;
  const money = (estimate: Estimate): string => moneyEstimateText(estimate, currency, WHOLE);
  const bought = purchases.reduce((sum, { amount }) => sum + amount, 0);
  const outside = `The same parts made outside would cost ${money(outsidePerYear)} a year`;
  const isCheaper = saved.value >= 0;
  const savedWords = isCheaper
    ? `once the lab stands, it saves ${money(saved)} of that`
    : `the lab costs ${money(opposite(saved))} more, purchases not counted`;
  const over = `Over ${yearWords(years)} at ${percentOf(interest)} % interest`;
  const spent = bought === 0 ? '' : `, purchases of ${moneyText(bought, currency, WHOLE)} taken off`;
  const judged = `${over} its net present value is ${money(worth)}${spent}.`;
  return [`${outside}; ${savedWords}. ${judged}${isCheaper ? paybackWords(found) : ''}`];
}

function paybackWords({
  paybackYears: payback,
  paidBackInTime: inTime,
  paybackWithinYears: within,
}: Extract<BusinessCase, { kind: 'compared' }>): string {
  if (payback.kind === 'never') return ` ${payback.reason}`;
  if (payback.kind !== 'estimate') return '';
  const chance =
    inTime.kind === 'estimate'
      ? `; within ${yearWords(within)} in ${shareWords(inTime)} of the replications`
      : '';
  return ` It has paid for itself after ${bareDurationWords(payback, { size: 1, one: 'year', many: 'years' })} years${chance}.`;
}

function yearWords(years: number): string {
  return years === 1 ? '1 year' : `${Number(years.toFixed(2))} years`;
}

function opposite({ value, low, high, ...rest }: Estimate): Estimate {
  return { ...rest, value: -value, low: -high, high: -low };
}
