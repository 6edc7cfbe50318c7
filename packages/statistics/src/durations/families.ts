import {
  gammaFunction,
  gammaQuantile,
  incompleteGamma,
  inverseNormal,
  logGamma,
  normalCumulative,
} from '@buildweek/numbers';

/** Families of durations that are fitted. */
export const DURATION_FAMILIES = ['lognormal', 'gamma', 'weibull', 'exponential'] as const;
export type DurationFamily = (typeof DURATION_FAMILIES)[number];

/** A law of a family. The exponential law has shape 1. */
export type DurationLaw =
  | { readonly family: 'lognormal'; readonly logMean: number; readonly logStandardDeviation: number }
  | { readonly family: 'gamma' | 'weibull'; readonly shape: number; readonly scale: number }
  | { readonly family: 'exponential'; readonly mean: number };

/** The law of a family with a mean and a shape: of the lognormal law the shape is its logarithmic standard deviation. */
export function lawOf(family: DurationFamily, mean: number, shape: number): DurationLaw {
  switch (family) {
    case 'lognormal':
      return { family, logMean: Math.log(mean) - shape ** 2 / 2, logStandardDeviation: shape };
    case 'gamma':
      return { family, shape, scale: mean / shape };
    case 'weibull':
      return { family, shape, scale: mean / gammaFunction(1 + 1 / shape) };
    case 'exponential':
      return { family, mean };
  }
}

export function meanOfLaw(law: DurationLaw): number {
  switch (law.family) {
    case 'lognormal':
      return Math.exp(law.logMean + law.logStandardDeviation ** 2 / 2);
    case 'gamma':
      return law.shape * law.scale;
    case 'weibull':
      return law.scale * gammaFunction(1 + 1 / law.shape);
    case 'exponential':
      return law.mean;
  }
}

/** What a duration of the law stays below with probability p, 0 < p < 1. */
export function quantileOfLaw(law: DurationLaw, p: number): number {
  switch (law.family) {
    case 'lognormal':
      return Math.exp(law.logMean + law.logStandardDeviation * inverseNormal(p));
    case 'gamma':
      return law.scale * gammaQuantile(p, law.shape);
    case 'weibull':
      return law.scale * (-Math.log1p(-p)) ** (1 / law.shape);
    case 'exponential':
      return -law.mean * Math.log1p(-p);
  }
}

const HALF_LOG_TWO_PI = Math.log(2 * Math.PI) / 2;

/** Logarithm of the density at a duration. */
export function logDensity(law: DurationLaw, x: number): number {
  switch (law.family) {
    case 'lognormal': {
      const z = (Math.log(x) - law.logMean) / law.logStandardDeviation;
      return -HALF_LOG_TWO_PI - Math.log(law.logStandardDeviation * x) - z ** 2 / 2;
    }
    case 'gamma':
      return (
        (law.shape - 1) * Math.log(x) - x / law.scale - law.shape * Math.log(law.scale) - logGamma(law.shape)
      );
    case 'weibull': {
      const z = x / law.scale;
      return Math.log(law.shape / law.scale) + (law.shape - 1) * Math.log(z) - z ** law.shape;
    }
    case 'exponential':
      return -Math.log(law.mean) - x / law.mean;
  }
}

/** Logarithm of the probability of a longer duration. */
export function logSurvival(law: DurationLaw, x: number): number {
  switch (law.family) {
    case 'lognormal':
      return Math.log(normalCumulative(-(Math.log(x) - law.logMean) / law.logStandardDeviation));
    case 'gamma':
      return Math.log(incompleteGamma(law.shape, x / law.scale).upper);
    case 'weibull':
      return -((x / law.scale) ** law.shape);
    case 'exponential':
      return -x / law.mean;
  }
}
