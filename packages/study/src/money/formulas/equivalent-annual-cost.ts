import { capitalRecovery, presentWorth } from './annuity.ts';

/** What is bought and used up. Amounts in one currency. */
export interface Asset {
  readonly price: number;
  /** Above 0. */
  readonly lifeYears: number;
  /** What it is worth at the end of its life. */
  readonly residualValue: number;
  /** At the end of each year. */
  readonly yearlyCost: number;
}

/**
 * Equal payment at the end of each year that is worth as much as buying, running and in the end selling: what makes
 * assets of unequal lives comparable, each replaced by its like.
 * Source: W. G. Sullivan, E. M. Wicks and C. P. Koelling, Engineering Economy, chapter 5, annual worth method (from
 * memory).
 * @param rate yearly interest, 0.08 for 8 %
 * @throws RangeError for a rate of -1 or less, or a life that is not above 0
 */
export function equivalentAnnualCost(asset: Asset, rate: number): number {
  return capitalRecoveryCost(asset, rate) + asset.yearlyCost;
}

/** The same without what it costs to run. Errors as above. */
export function capitalRecoveryCost(asset: Omit<Asset, 'yearlyCost'>, rate: number): number {
  const { price, lifeYears, residualValue } = asset;
  return (price - residualValue * presentWorth(rate, lifeYears)) * capitalRecovery(rate, lifeYears);
}
