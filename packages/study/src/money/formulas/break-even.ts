import { checkNotNegative } from './checks.ts';
import { capitalRecoveryCost } from './equivalent-annual-cost.ts';

/** A purchase that saves the same for every part that it makes. */
export interface MakeOrBuy {
  readonly price: number;
  readonly lifeYears: number;
  readonly residualValue: number;
  /** What it costs every year, whatever it makes. */
  readonly fixedPerYear: number;
  /** Price of a part outside less what it costs to make one. */
  readonly savedPerPart: number;
}

/**
 * Parts a year from which on making is cheaper than buying: the net present value over the life is zero.
 * Source: W. G. Sullivan, E. M. Wicks and C. P. Koelling, Engineering Economy, chapter 11, breakeven analysis (from
 * memory).
 * @param rate yearly interest, 0.08 for 8 %
 * @returns Infinity when a part saves nothing
 * @throws RangeError for a negative amount, a rate of -1 or less, or a life that is not above 0
 */
export function breakEvenPartsPerYear(question: MakeOrBuy, rate: number): number {
  checkNotNegative('price', question.price);
  checkNotNegative('residual value', question.residualValue);
  checkNotNegative('fixed cost', question.fixedPerYear);
  const fixed = capitalRecoveryCost(question, rate) + question.fixedPerYear;
  if (fixed <= 0) return 0;
  return question.savedPerPart > 0 ? fixed / question.savedPerPart : Number.POSITIVE_INFINITY;
}
