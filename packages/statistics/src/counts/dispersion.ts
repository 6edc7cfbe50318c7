import { chiSquareUpper, logGamma } from '@buildweek/numbers';
import { maximize } from '../durations/maximize.ts';
import { mean, variance } from '../summary.ts';

/** How counts of equal periods vary, held against Poisson counts. */
export interface Dispersion {
  readonly mean: number;
  readonly variance: number;
  /** Variance over mean: 1 for Poisson counts. */
  readonly index: number;
  readonly chiSquare: number;
  /** Probability that Poisson counts vary at least as much. */
  readonly pValue: number;
}

/**
 * Test of counts for being Poisson with one mean, against varying more.
 * Source: R. A. Fisher, "The significance of deviations from expectation in a Poisson series", Biometrics 6 (1950), 17–24.
 * @throws RangeError for fewer than two counts, or when all are 0
 */
export function dispersionTest(counts: readonly number[]): Dispersion {
  if (counts.length < 2) throw new RangeError('Two counts are needed to see how they vary.');
  const centre = mean(counts);
  if (centre === 0) throw new RangeError('Counts of 0 do not vary.');
  const spread = variance(counts);
  const degreesOfFreedom = counts.length - 1;
  const chiSquare = (degreesOfFreedom * spread) / centre;
  return {
    mean: centre,
    variance: spread,
    index: spread / centre,
    chiSquare,
    pValue: chiSquareUpper(chiSquare, degreesOfFreedom),
  };
}

/** Counts whose Poisson mean is itself drawn from a gamma law. */
export interface NegativeBinomial {
  readonly mean: number;
  /** Shape of the gamma law: the coefficient of variation of the means is 1/√k. Infinity: Poisson. */
  readonly shape: number;
  readonly logLikelihood: number;
}

const LARGEST_SHAPE = 1e6;

/**
 * The negative binomial law with the largest likelihood; its mean is that of the counts.
 * Source: C. I. Bliss and R. A. Fisher, "Fitting the negative binomial distribution to biological data", Biometrics 9
 * (1953), 176–200.
 */
export function fitNegativeBinomial(counts: readonly number[]): NegativeBinomial {
  const centre = mean(counts);
  const { at, value } = maximize(
    (log) => negativeBinomialLogLikelihood(counts, centre, Math.exp(log)),
    Math.log(1e-4),
    Math.log(LARGEST_SHAPE),
    1e-10,
  );
  const poisson = poissonLogLikelihood(counts);
  return poisson >= value - 1e-9
    ? { mean: centre, shape: Number.POSITIVE_INFINITY, logLikelihood: poisson }
    : { mean: centre, shape: Math.exp(at), logLikelihood: value };
}

/** m² / (s² − m); Infinity where counts vary no more than Poisson counts. Source: as above. */
export function negativeBinomialShapeByMoments(counts: readonly number[]): number {
  const centre = mean(counts);
  const excess = variance(counts) - centre;
  return excess <= 0 ? Number.POSITIVE_INFINITY : centre ** 2 / excess;
}

/** Logarithm of the probability of counts that are Poisson with their own mean. */
export function poissonLogLikelihood(counts: readonly number[]): number {
  const centre = mean(counts);
  return counts.reduce(
    (total, count) => total + (count === 0 ? 0 : count * Math.log(centre)) - centre - logGamma(count + 1),
    0,
  );
}

function negativeBinomialLogLikelihood(counts: readonly number[], centre: number, shape: number): number {
  const fails = shape * Math.log(shape / (shape + centre));
  const step = Math.log(centre / (shape + centre));
  return counts.reduce(
    (total, count) =>
      total +
      logGamma(shape + count) -
      logGamma(shape) -
      logGamma(count + 1) +
      fails +
      (count === 0 ? 0 : count * step),
    0,
  );
}
