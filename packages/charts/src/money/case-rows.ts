import {
  type BusinessCase,
  type EstimateOrRefused,
  type Money,
  moneyEstimateText,
  moneyText,
  WHOLE,
} from '@buildweek/results';
import { formatEstimate, PERCENT, type Unit } from '../format.ts';

/** A line of the comparison with sending everything out, in words. */
export interface CaseRow {
  readonly what: string;
  readonly found: string;
}

const YEARS: Unit = { size: 1, one: 'year', many: 'years', leastDecimals: 1 };

/** The lab against sending everything out, line by line; empty where there is nothing to compare. */
export function caseRows({ case: found, purchases, currency }: Money): CaseRow[] {
  if (found.kind !== 'compared') return [];
  const { outsidePerYear, savedPerYear, netPresentValue, paybackYears, paidBackInTime, internalRate } = found;
  const money = (estimate: typeof savedPerYear): string => moneyEstimateText(estimate, currency, WHOLE);
  const bought = purchases.reduce((sum, { amount }) => sum + amount, 0);
  const interest = `${Number((100 * found.interest).toPrecision(4))}\u00a0%`;
  return [
    { what: 'the same parts made outside, a year', found: money(outsidePerYear) },
    {
      what: 'saved by the lab a year once it stands, before purchases',
      found: money(savedPerYear),
    },
    { what: 'to be bought', found: bought === 0 ? 'nothing' : moneyText(bought, currency, WHOLE) },
    {
      what: `net present value over ${yearsWords(found.years)} at ${interest} interest`,
      found: money(netPresentValue),
    },
    { what: 'paid for after', found: words(paybackYears, YEARS) },
    {
      what: `paid for within ${yearsWords(found.paybackWithinYears)}, of the replications`,
      found: words(paidBackInTime, PERCENT),
    },
    { what: 'internal rate of return, a year', found: words(internalRate, PERCENT) },
  ];
}

/** How the lines are meant: one replication stands for what every year is like. */
export function caseNote(found: BusinessCase, weeks: string): string {
  if (found.kind !== 'compared') return found.reason;
  return `Every replication of ${weeks} gives one value: what the years bring if each is like it. The interval of the net present value is that of the average: how well it is known, not what luck may bring in a single year. Luck evens out over the years, so that paying back is surer than the share of replications says where that is above one half, and less sure below. Years for paying back and the internal rate are medians.`;
}

function words(estimate: EstimateOrRefused, unit: Unit): string {
  switch (estimate.kind) {
    case 'estimate':
      return formatEstimate(estimate, unit);
    case 'refused':
      return `not given: ${estimate.reason}`;
    case 'never':
      return `open: ${estimate.reason}`;
  }
}

function yearsWords(years: number): string {
  return years === 1 ? '1 year' : `${Number(years.toFixed(2))} years`;
}
