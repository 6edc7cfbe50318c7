import { checkNotNegative, checkYears } from './checks.ts';

/** Amount by which an asset is written down in each year, from the first to the last of its life. */
export type Depreciation = (cost: number, residualValue: number, years: number) => number[];

/**
 * The same amount every year.
 * Source for all three: W. G. Sullivan, E. M. Wicks and C. P. Koelling, Engineering Economy, chapter 7 (from memory).
 * @throws RangeError for a negative amount, a residual value above the cost, or years that are no whole number from 1
 */
export const straightLine: Depreciation = (cost, residualValue, years) => {
  checkAsset(cost, residualValue, years);
  return Array.from({ length: years }, () => (cost - residualValue) / years);
};

/** In proportion to the years that are left: 5/15, 4/15, … in five years. Errors as above. */
export const sumOfYears: Depreciation = (cost, residualValue, years) => {
  checkAsset(cost, residualValue, years);
  const sum = (years * (years + 1)) / 2;
  return Array.from({ length: years }, (_, year) => ((cost - residualValue) * (years - year)) / sum);
};

/** Twice the straight-line share of what it is still worth, never below the residual value. Errors as above. */
export const doubleDeclining: Depreciation = (cost, residualValue, years) => {
  checkAsset(cost, residualValue, years);
  let worth = cost;
  return Array.from({ length: years }, () => {
    const amount = Math.min((worth * 2) / years, worth - residualValue);
    worth -= amount;
    return amount;
  });
};

function checkAsset(cost: number, residualValue: number, years: number): void {
  checkNotNegative('cost', cost);
  checkNotNegative('residual value', residualValue);
  checkYears(years);
  if (residualValue > cost) {
    throw new RangeError(`A residual value of ${residualValue} is above the cost of ${cost}`);
  }
}
