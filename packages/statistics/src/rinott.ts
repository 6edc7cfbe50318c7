import { gammaQuantile, normalCumulative } from '@buildweek/numbers';
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

/** Points at which the chi-square distribution is taken, in the middle of slices of equal probability. */
const SLICES = 400;

/**
 * The constant h of Rinott's procedure: the solution of
 * E[ (E[ Φ(h / √((n0 − 1) (1/X + 1/Y))) | Y ])^(k − 1) ] = 1 − alpha, X and Y chi-square with n0 − 1 degrees of freedom.
 * Found by bisection; the expectations are averages over 400 slices of equal probability, which leaves an error of less
 * than 0.002.
 * @param systems at least 2
 * @param firstStage at least 3
 * @throws RangeError for other numbers, or unless 0 < alpha < 1
 */
export function rinottConstant(systems: number, firstStage: number, alpha: number): number {
  checkShare('share of wrong answers', alpha);
  if (!(Number.isInteger(systems) && systems >= 2 && Number.isInteger(firstStage) && firstStage >= 3)) {
    throw new RangeError(`There is no constant for ${systems} systems and a first stage of ${firstStage}`);
  }
  const freedom = firstStage - 1;
  const inverses = Float64Array.from(
    { length: SLICES },
    (_, slice) => freedom / (2 * gammaQuantile((slice + 0.5) / SLICES, freedom / 2)),
  );
  const chance = (h: number): number => {
    let total = 0;
    for (const own of inverses) {
      let inner = 0;
      for (const other of inverses) inner += normalCumulative(h / Math.sqrt(own + other));
      total += (inner / SLICES) ** (systems - 1);
    }
    return total / SLICES;
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
