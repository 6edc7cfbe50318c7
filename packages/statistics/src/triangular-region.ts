import { checkShare } from './checks.ts';

/** How far a triangular region reaches, in units of the first stage's variance. */
export interface RegionConstants {
  readonly eta: number;
  /** 2 · eta · (first stage − 1), for c = 1. */
  readonly hSquared: number;
}

/**
 * Constants of a region whose two sides have the same error level: eta = ½ [(2 error)^(−2 / (n0 − 1)) − 1].
 *
 * With error = alpha / k it is for k plans by Bonferroni, with 1 − (1 − alpha)^(1/k) for k independent ones, and with
 * alpha / (k − 1) it is that of Kim and Nelson for the best of k.
 * Sources: S. Andradóttir and S.-H. Kim, "Fully sequential procedures for comparing constrained systems via
 * simulation", Naval Research Logistics 57 (2010), 403–421; S.-H. Kim and B. L. Nelson, "A fully sequential procedure
 * for indifference-zone selection in simulation", ACM Transactions on Modeling and Computer Simulation 11 (2001),
 * 251–273 (formulas from memory).
 * @param firstStage replications from which the variance comes, at least 2
 * @param error chance of leaving on the wrong side when the mean is one tolerance away, below ½
 * @throws RangeError for another first stage or error level
 */
export function twoSidedRegion(firstStage: number, error: number): RegionConstants {
  checkShare('error level', 2 * error);
  return constants(firstStage, 2 * error);
}

/**
 * Constants of one side of a region, whatever the other side does: eta = ½ [error^(−2 / (n0 − 1)) − 1].
 *
 * Derivation. Let the sum of r values have drift +d (d the tolerance) and variance s² a value, and let the side be the
 * line −(a − (d/2) r). The sum less (d/2) r is a random walk of drift d/2; a Brownian motion of that drift and variance
 * falls to −a at any time at all with the chance exp(−2 (d/2) a / s²) = exp(−a d / s²), and a walk that looks at it in
 * steps does so at most as often. The line is drawn at a = h² S² / (2 d), where S² comes from the first n0 normal
 * values and is independent of the sums from n0 on. Given S² the chance is at most exp(−h² S² / (2 s²)) =
 * exp(−eta Q), where Q = (n0 − 1) S² / s² is chi-square with n0 − 1 degrees of freedom; averaged over Q it is
 * (1 + 2 eta)^(−(n0 − 1) / 2), which is the error level. Nothing was said of the other side: leaving there first makes
 * the error rarer. At the end of the region, where its half width is 0 and the sign decides, a negative sum lies beyond
 * the line as well, so that nothing is added. The two-sided region is smaller, by the factor 2 in front of the error,
 * because there a walk that crosses one line has lost half of its chances to the other: V. Fabian, "Note on
 * Anscombe's sequential analysis procedures", Annals of Statistics 2 (1974), 170–176.
 * @throws RangeError as above, and for an error level of 1 or more
 */
export function oneSidedRegion(firstStage: number, error: number): RegionConstants {
  checkShare('error level', error);
  return constants(firstStage, error);
}

function constants(firstStage: number, base: number): RegionConstants {
  if (!(Number.isInteger(firstStage) && firstStage >= 2)) {
    throw new RangeError(`The first stage must be a whole number of at least 2, not ${firstStage}`);
  }
  const eta = 0.5 * (base ** (-2 / (firstStage - 1)) - 1);
  return { eta, hSquared: 2 * eta * (firstStage - 1) };
}

/**
 * The half width of the region for the sum of r values, 0 from its end on:
 * max(0, (tolerance / 2) (h² S² / tolerance² − r)).
 * @param variance of the first stage, in the square of the unit of the values
 * @param tolerance in the unit of the values
 */
export function regionHalfWidth(
  hSquared: number,
  variance: number,
  tolerance: number,
  replications: number,
): number {
  return Math.max(0, (tolerance / 2) * ((hSquared * variance) / tolerance ** 2 - replications));
}
