import type { HyperexponentialBranch } from '@buildweek/model';

/** Steps stop when they are below this share of the value: a few last places. */
const TOLERANCE = 1e-14;
/** Convergence is quadratic; this many steps are never needed and only guard against a last place that wavers. */
const MOST_STEPS = 60;

/**
 * The inverse distribution function of a mixture of exponentials, to a few last places: x solves
 * ln(Σ p exp(−x / m)) = ln(1 − u). The left side is convex and falls, so Newton's steps from a point below the
 * root rise to it without ever passing it.
 */
export class HyperexponentialQuantile {
  private readonly probabilities: Float64Array;
  private readonly logProbabilities: Float64Array;
  private readonly means: Float64Array;
  private readonly rates: Float64Array;
  private readonly meanRate: number;

  /** @param branches probabilities in any common scale, means positive, in hours */
  constructor(branches: readonly HyperexponentialBranch[]) {
    const total = branches.reduce((sum, branch) => sum + branch.probability, 0);
    const possible = branches.filter((branch) => branch.probability > 0);
    this.probabilities = Float64Array.from(possible, (branch) => branch.probability / total);
    this.logProbabilities = this.probabilities.map(Math.log);
    this.means = Float64Array.from(possible, (branch) => branch.mean);
    this.rates = this.means.map((mean) => 1 / mean);
    this.meanRate = this.probabilities.reduce((sum, p, branch) => sum + p * this.rates[branch], 0);
  }

  /** @param u strictly between 0 and 1  @returns hours below which a draw falls with probability u */
  value(u: number): number {
    const { probabilities, rates } = this;
    const target = -Math.log1p(-u);
    let x = this.lowerBound(target);
    for (let step = 0; step < MOST_STEPS; step++) {
      let survival = 0;
      let failure = 0;
      let density = 0;
      for (let branch = 0; branch < rates.length; branch++) {
        const term = probabilities[branch] * Math.exp(-x * rates[branch]);
        survival += term;
        failure -= probabilities[branch] * Math.expm1(-x * rates[branch]);
        density += term * rates[branch];
      }
      // Next to 1 the survival has lost the digits that its complement still has.
      const logSurvival = failure < 0.5 ? Math.log1p(-failure) : Math.log(survival);
      const rise = ((logSurvival + target) * survival) / density;
      x += rise;
      if (rise <= TOLERANCE * x) break;
    }
    return x;
  }

  /**
   * A point that is not above the root: the mixture survives at least as well as each branch alone does, and
   * at least as well as an exponential of the mean rate (Jensen's inequality).
   */
  private lowerBound(target: number): number {
    let bound = target / this.meanRate;
    for (let branch = 0; branch < this.means.length; branch++) {
      bound = Math.max(bound, this.means[branch] * (target + this.logProbabilities[branch]));
    }
    return bound;
  }
}
