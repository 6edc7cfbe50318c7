import { sum } from '@buildweek/numbers';
import { checkValues } from './checks.ts';

/**
 * How to share a number of replications among systems so that the one with the smallest mean is found most probably:
 * optimal computing budget allocation. It promises no error level: what the chance comes to depends on means and
 * deviations that are themselves estimated. It holds for independent systems, not for common random numbers. To be used
 * where replications are scarce and a guess is better than none.
 * Source: C.-H. Chen, J. Lin, E. Yücesan and S. E. Chick, "Simulation budget allocation for further enhancing the
 * efficiency of ordinal optimization", Discrete Event Dynamic Systems 10 (2000), 251–270, theorem 1.
 * @param means of at least two systems; only one may have the smallest
 * @param deviations standard deviations, each above 0
 * @param budget replications of all systems together, above 0
 * @returns the share of each system, not rounded; their sum is the budget
 * @throws RangeError for anything else
 */
export function optimalAllocation(
  means: ArrayLike<number>,
  deviations: ArrayLike<number>,
  budget: number,
): number[] {
  checkValues(means, 2);
  checkValues(deviations, 2);
  const own = Array.from(means);
  if (deviations.length !== own.length) throw new RangeError('Each mean needs its deviation');
  const spreads = Array.from(deviations);
  if (!(budget > 0 && spreads.every((spread) => spread > 0))) {
    throw new RangeError('The budget and each deviation must be above 0');
  }
  const smallest = Math.min(...own);
  const best = own.indexOf(smallest);
  if (own.lastIndexOf(smallest) !== best) throw new RangeError('More than one system has the smallest mean');
  const weights = own.map((value, index) =>
    index === best ? 0 : ((spreads[index] as number) / (value - smallest)) ** 2,
  );
  const squares = weights.map((weight, index) => (weight / (spreads[index] as number)) ** 2);
  weights[best] = (spreads[best] as number) * Math.sqrt(sum(squares));
  const total = sum(weights);
  return weights.map((weight) => (budget * weight) / total);
}
