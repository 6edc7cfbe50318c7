import { normalCumulative, sum } from '@buildweek/numbers';
import { checkShare, checkValues } from './checks.ts';
import { variance } from './summary.ts';

/**
 * How many replications each of several systems needs, so that the one with the best mean can be chosen by the means
 * alone: N = max(n0, ⌈(h / tolerance)² S²⌉). The systems have to be independent: no common random numbers.
 * Source: Y. Rinott, "On two-stage selection procedures and related probability-inequalities", Communications in
 * Statistics A7 (1978), 799–811.
 * @param firstStages at least two values for each system
 * @param h from `rinottConstant`, for the length of the first stages
 * @param tolerance difference of means too small to matter, above 0
 * @throws RangeError for values that are too few or not finite, a tolerance or constant that is not above 0
 */
export function rinottReplications(
  firstStages: readonly ArrayLike<number>[],
  h: number,
  tolerance: number,
): number[] {
  if (!(h > 0 && tolerance > 0)) throw new RangeError('The constant and the tolerance must be above 0');
  return firstStages.map((values) => {
    checkValues(values, 2);
    return Math.max(values.length, Math.ceil((h / tolerance) ** 2 * variance(values)));
  });
}

/** Points at which the logarithm of the chi-square variable is taken. */
const POINTS = 160;

/**
 * The constant h of Rinott's procedure: the solution of
 * E[ (E[ Φ(h / √((n0 − 1) (1/X + 1/Y))) | Y ])^(k − 1) ] = 1 − alpha, X and Y chi-square with n0 − 1 degrees of freedom.
 * Found by bisection. The expectations are sums by the trapezoidal rule over the logarithm of the variable, whose density
 * is smooth and vanishes at both ends, so that the rule converges faster than any power of the step.
 * @param systems at least 2
 * @param firstStage at least 3
 * @throws RangeError for other numbers, or unless 0 < alpha < 1
 */
export function rinottConstant(systems: number, firstStage: number, alpha: number): number {
  checkShare('share of wrong answers', alpha);
  if (!(Number.isInteger(systems) && systems >= 2 && Number.isInteger(firstStage) && firstStage >= 3)) {
    throw new RangeError(`There is no constant for ${systems} systems and a first stage of ${firstStage}`);
  }
  const nodes = chiSquareNodes(firstStage - 1);
  const chance = (h: number): number => {
    let total = 0;
    for (const own of nodes) {
      let inner = 0;
      for (const other of nodes) {
        inner += other.weight * normalCumulative(h / Math.sqrt(own.inverse + other.inverse));
      }
      total += own.weight * inner ** (systems - 1);
    }
    return total;
  };
  let low = 0;
  let high = 1;
  while (chance(high) < 1 - alpha) high *= 2;
  while (high - low > 1e-6) {
    const middle = (low + high) / 2;
    if (chance(middle) < 1 - alpha) low = middle;
    else high = middle;
  }
  return high;
}

/** Degrees of freedom over a chi-square variable, at points with their shares of the probability. */
function chiSquareNodes(freedom: number): { readonly inverse: number; readonly weight: number }[] {
  // The density of the logarithm t is exp(freedom t / 2 − exp(t) / 2) but for a factor; at these ends it has fallen to
  // less than 1e-13 of its top.
  const left = Math.log(freedom) - 64 / freedom - 1;
  const right = Math.log(freedom + 12 * Math.sqrt(2 * freedom) + 60);
  const top = (freedom / 2) * (Math.log(freedom) - 1);
  const points = Array.from({ length: POINTS }, (_, index) => {
    const t = left + ((right - left) * index) / (POINTS - 1);
    return { inverse: freedom / Math.exp(t), weight: Math.exp((freedom * t - Math.exp(t)) / 2 - top) };
  });
  const total = sum(points.map(({ weight }) => weight));
  return points.map(({ inverse, weight }) => ({ inverse, weight: weight / total }));
}
