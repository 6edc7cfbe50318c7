import type { BudgetTarget, Economics, Lab } from '@buildweek/model';
import { committedCostPerYear, purchases } from '../money/committed-cost.ts';

/**
 * What a budget is compared with, known without playing anything: the price of what has to be bought, or what the lab
 * costs in a year whatever it does. The budget is kept when this is at most what the target says.
 *
 * @returns an amount in the currency of the economics
 */
export function knownCost(lab: Lab, { of }: Pick<BudgetTarget, 'of'>, economics: Economics): number {
  if (of === 'year') return committedCostPerYear(lab, economics);
  return purchases(lab, economics).reduce((sum, { amount }) => sum + amount, 0);
}
