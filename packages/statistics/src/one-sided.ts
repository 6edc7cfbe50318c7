import { binomialCumulative, studentCumulative } from '@buildweek/numbers';
import { checkShare } from './checks.ts';
import { mean, standardError } from './summary.ts';

/**
 * With what confidence a mean is at least 0: the highest level whose one-sided lower bound by Student is not below 0.
 * 1 less this is the confidence that it is at most 0. It says how far the replications speak for it, not how probable it
 * is.
 * Source: A. M. Law and W. D. Kelton, Simulation Modeling and Analysis, third edition, section 4.5.
 * @param values independent, one for each replication, less the target that the mean has to reach
 * @returns between 0 and 1; exactly that where the values do not vary
 * @throws RangeError for fewer than two values, or one that is not finite
 */
export function oneSidedConfidence(values: ArrayLike<number>): number {
  const centre = mean(values);
  const error = standardError(values);
  if (error === 0) return centre >= 0 ? 1 : 0;
  return studentCumulative(centre / error, values.length - 1);
}

/** How sure one may be that a probability is at least, or at most, what was asked for. */
export interface ShareConfidence {
  readonly atLeast: number;
  readonly atMost: number;
}

/**
 * With what confidence a probability is at least, and at most, a given one: the highest levels whose one-sided bounds by
 * Clopper and Pearson still say so. Exact, hence careful: the two together are less than 1.
 * Source: C. J. Clopper and E. S. Pearson, "The use of confidence or fiducial limits illustrated in the case of
 * the binomial", Biometrika 26 (1934), 404–413.
 * @param successes in independent trials, such as the periods that met a target
 * @throws RangeError unless 0 ≤ successes ≤ trials are whole numbers, trials ≥ 1 and 0 < share < 1
 */
export function shareConfidence(successes: number, trials: number, share: number): ShareConfidence {
  checkShare('share', share);
  if (
    !(Number.isInteger(successes) && Number.isInteger(trials) && successes >= 0 && successes <= trials) ||
    trials < 1
  ) {
    throw new RangeError(`${successes} successes in ${trials} trials cannot be`);
  }
  return {
    atLeast: binomialCumulative(successes - 1, trials, share),
    atMost: 1 - binomialCumulative(successes, trials, share),
  };
}
