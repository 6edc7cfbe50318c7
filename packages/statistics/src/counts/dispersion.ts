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

/**
 * The same about means that differ, such as those of a trend: Pearson's statistic.
 * Source: P. McCullagh and J. A. Nelder, Generalized Linear Models (1989), section 6.2.
 * @param means positive, one for each count
 * @param fitted number of parameters that they were fitted with
 * @throws RangeError when no degree of freedom is left
 */
export function dispersionAbout(
  counts: readonly number[],
  means: readonly number[],
  fitted: number,
): Dispersion {
  const degreesOfFreedom = counts.length - fitted;
  if (degreesOfFreedom < 1) throw new RangeError('More counts are needed to see how they vary.');
  const chiSquare = counts.reduce((total, count, index) => {
    const expected = means[index] ?? 0;
    return total + (count - expected) ** 2 / expected;
  }, 0);
  return {
    mean: mean(counts),
    variance: (chiSquare / degreesOfFreedom) * mean(counts),
    index: chiSquare / degreesOfFreedom,
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
 * @param means of each count, where they differ; positive
 */
export function fitNegativeBinomial(
  counts: readonly number[],
  means: readonly number[] = counts.map(() => mean(counts)),
): NegativeBinomial {
  const centre = mean(counts);
  const { at, value } = maximize(
    (log) => negativeBinomialLogLikelihood(counts, means, Math.exp(log)),
    Math.log(1e-4),
    Math.log(LARGEST_SHAPE),
    1e-10,
  );
  const poisson = poissonLogLikelihoodOf(counts, means);
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
  return poissonLogLikelihoodOf(
    counts,
    counts.map(() => centre),
  );
}

function poissonLogLikelihoodOf(counts: readonly number[], means: readonly number[]): number {
  return counts.reduce((total, count, index) => {
    const centre = means[index] ?? 0;
    return total + (count === 0 ? 0 : count * Math.log(centre)) - centre - logGamma(count + 1);
  }, 0);
}

function negativeBinomialLogLikelihood(
  counts: readonly number[],
  means: readonly number[],
  shape: number,
): number {
  return counts.reduce((total, count, index) => {
    const centre = means[index] ?? 0;
    return (
      total +
      logGamma(shape + count) -
      logGamma(shape) -
      logGamma(count + 1) +
      shape * Math.log(shape / (shape + centre)) +
      (count === 0 ? 0 : count * Math.log(centre / (shape + centre)))
    );
  }, 0);
}
