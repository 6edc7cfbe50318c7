import { gammaFunction, incompleteGamma, logGamma, normalCumulative } from '@buildweek/numbers';
import type { CensoredSample } from './censored-sample.ts';
import type { DurationFamily } from './families.ts';

const HALF_LOG_TWO_PI = Math.log(2 * Math.PI) / 2;

/** Logarithm of the likelihood of a sample as a function of the mean and the shape of a family, as `lawOf` takes them. */
export type Likelihood = (mean: number, shape: number) => number;

/**
 * Adds up beforehand what the likelihood needs of the values that were seen, so that a search over means and shapes does
 * not go through them each time. Only the Weibull law asks for a power of every value.
 * Source: J. F. Lawless, Statistical Models and Methods for Lifetime Data, second edition (2003), sections 5.1 to 5.3.
 */
export function likelihoodOfSample(
  family: Exclude<DurationFamily, 'exponential'>,
  sample: CensoredSample,
): Likelihood {
  switch (family) {
    case 'lognormal':
      return lognormal(sample);
    case 'gamma':
      return gamma(sample);
    case 'weibull':
      return weibull(sample);
  }
}

function lognormal({ values, censored }: CensoredSample): Likelihood {
  const seen = values.length;
  const logs = values.map(Math.log);
  const openLogs = censored.map(Math.log);
  const meanLog = total(logs) / seen;
  const squares = total(logs.map((log) => (log - meanLog) ** 2));
  return (mean, shape) => {
    const logMean = Math.log(mean) - shape ** 2 / 2;
    const about = squares + seen * (meanLog - logMean) ** 2;
    let open = 0;
    for (const log of openLogs) open += Math.log(normalCumulative(-(log - logMean) / shape));
    return open - seen * (HALF_LOG_TWO_PI + Math.log(shape) + meanLog) - about / (2 * shape ** 2);
  };
}

function gamma({ values, censored }: CensoredSample): Likelihood {
  const seen = values.length;
  const sum = total(values);
  const sumOfLogs = total(values.map(Math.log));
  return (mean, shape) => {
    const scale = mean / shape;
    let open = 0;
    for (const value of censored) open += Math.log(incompleteGamma(shape, value / scale).upper);
    return open + (shape - 1) * sumOfLogs - sum / scale - seen * (shape * Math.log(scale) + logGamma(shape));
  };
}

function weibull({ values, censored }: CensoredSample): Likelihood {
  const seen = values.length;
  const logs = Float64Array.from([...values, ...censored], Math.log);
  const sumOfLogs = total(values.map(Math.log));
  return (mean, shape) => {
    const logScale = Math.log(mean / gammaFunction(1 + 1 / shape));
    let powers = 0;
    for (const log of logs) powers += Math.exp(shape * (log - logScale));
    return seen * (Math.log(shape) - shape * logScale) + (shape - 1) * sumOfLogs - powers;
  };
}

function total(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}
