import { chiSquareQuantile, digamma, trigamma } from '@buildweek/numbers';
import { checkLevel } from '../checks.ts';
import type { Interval } from '../interval.ts';
import { type CensoredSample, checkSample } from './censored-sample.ts';
import {
  type DurationFamily,
  type DurationLaw,
  lawOf,
  logDensity,
  logSurvival,
  meanOfLaw,
  quantileOfLaw,
} from './families.ts';
import { likelihoodOfSample } from './likelihood.ts';
import { maximize, root } from './maximize.ts';

/** Fewer durations than this are not fitted: a range from the values says as much. */
export const FEWEST_FITTED = 10;
/** Families whose information criteria differ by less fit about equally. Source: K. P. Burnham and D. R. Anderson, Model Selection and Multimodel Inference (2002), section 2.6. */
const ABOUT_EQUAL = 2;

/** A law that was fitted by maximum likelihood. */
export interface DurationFit {
  readonly law: DurationLaw;
  readonly logLikelihood: number;
  /** Akaike's information criterion: twice the number of parameters less twice the log-likelihood. */
  readonly aic: number;
  /** The mean with its likelihood interval. */
  readonly mean: Interval;
  /** What 95 of 100 durations stay below. */
  readonly p95: number;
  /** Whether it fits about as well as the best. */
  readonly isAboutAsGood: boolean;
}

export type FittedDurations =
  | {
      readonly kind: 'fitted';
      /** The best first. */
      readonly fits: readonly DurationFit[];
      readonly seen: number;
      readonly censored: number;
    }
  | {
      readonly kind: 'range';
      /** Of a triangular law: smallest, median and largest of the values. */
      readonly low: number;
      readonly mode: number;
      readonly high: number;
      readonly seen: number;
      readonly censored: number;
      readonly warning: string;
    };

/**
 * Fits durations, some of which may only be known to be longer than a bound, by maximum likelihood, and puts the families
 * in the order of Akaike's criterion. Fewer than ten are not fitted.
 * Sources: W. Q. Meeker and L. A. Escobar, Statistical Methods for Reliability Data (1998), chapters 7 and 8 (likelihood
 * with right-censoring, likelihood-ratio intervals); A. M. Law, Simulation Modeling and Analysis, section 6.5.
 *
 * @param level of the intervals of means
 * @throws RangeError when there is no duration, or one is not positive
 */
export function fitDurations(
  sample: CensoredSample,
  families: readonly DurationFamily[],
  level: number,
): FittedDurations {
  checkSample(sample, 1);
  checkLevel(level);
  const { values, censored } = sample;
  const counts = { seen: values.length, censored: censored.length };
  const ascending = [...values].sort((a, b) => a - b);
  const [low = 0, high = 0] = [ascending[0], ascending.at(-1)];
  // Equal values have a likelihood without a maximum.
  if (values.length < FEWEST_FITTED || low === high) {
    const few = values.length < FEWEST_FITTED;
    return {
      kind: 'range',
      low,
      mode: ascending[Math.floor((ascending.length - 1) / 2)] ?? low,
      high,
      ...counts,
      warning: few
        ? `${values.length} ${values.length === 1 ? 'duration is' : 'durations are'} too few to fit a law: the range of what was seen is taken, and what lies beyond it is not known.`
        : 'All durations are the same.',
    };
  }
  const fits = families
    .map((family) => fitted(family, sample, level))
    .sort((one, other) => one.aic - other.aic);
  const best = fits[0]?.aic ?? 0;
  return {
    kind: 'fitted',
    fits: fits.map((fit) => ({ ...fit, isAboutAsGood: fit.aic - best < ABOUT_EQUAL })),
    ...counts,
  };
}

function fitted(family: DurationFamily, sample: CensoredSample, level: number): DurationFit {
  const law = fitFamily(family, sample);
  const logLikelihood = logLikelihoodOf(law, sample);
  return {
    law,
    logLikelihood,
    aic: 2 * (family === 'exponential' ? 1 : 2) - 2 * logLikelihood,
    mean: meanInterval(family, sample, law, logLikelihood, level),
    p95: quantileOfLaw(law, 0.95),
    isAboutAsGood: false,
  };
}

/** Logarithm of the likelihood: densities of what was seen to its end, probabilities of more for the rest. */
export function logLikelihoodOf(law: DurationLaw, { values, censored }: CensoredSample): number {
  let total = 0;
  for (const value of values) total += logDensity(law, value);
  for (const value of censored) total += logSurvival(law, value);
  return total;
}

/** The law of a family with the largest likelihood. @throws RangeError unless two different durations were seen */
export function fitFamily(family: DurationFamily, sample: CensoredSample): DurationLaw {
  checkSample(sample, family === 'exponential' ? 1 : 2);
  const { values, censored } = sample;
  switch (family) {
    case 'exponential':
      return { family, mean: (total(values) + total(censored)) / values.length };
    case 'weibull':
      return fitWeibull(sample);
    case 'gamma':
      return censored.length === 0 ? fitGamma(values) : fitByShape(family, sample);
    case 'lognormal':
      return censored.length === 0 ? fitLognormal(values) : fitByShape(family, sample);
  }
}

/**
 * The shape is the root of one equation, and the scale follows.
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, section 8.4.1.2.
 */
function fitWeibull({ values, censored }: CensoredSample): DurationLaw {
  const all = [...values, ...censored];
  // Powers of large numbers overflow; the largest is taken as the unit.
  const unit = Math.max(...all);
  const meanLog = total(values.map((value) => Math.log(value / unit))) / values.length;
  const score = (shape: number): number => {
    let [weighted, powers] = [0, 0];
    for (const value of all) {
      const power = (value / unit) ** shape;
      powers += power;
      weighted += power * Math.log(value / unit);
    }
    return weighted / powers - 1 / shape - meanLog;
  };
  const shape = root(score, 1e-3, 1e4);
  const powers = total(all.map((value) => (value / unit) ** shape));
  return { family: 'weibull', shape, scale: unit * (powers / values.length) ** (1 / shape) };
}

/** By Newton's method on ln k − ψ(k). Source: N. L. Johnson, S. Kotz and N. Balakrishnan, Continuous Univariate Distributions 1 (1994), section 17.7. */
function fitGamma(values: readonly number[]): DurationLaw {
  const mean = total(values) / values.length;
  const excess = Math.log(mean) - total(values.map(Math.log)) / values.length;
  let shape = (3 - excess + Math.sqrt((excess - 3) ** 2 + 24 * excess)) / (12 * excess);
  for (let step = 0; step < 100; step++) {
    const change = (Math.log(shape) - digamma(shape) - excess) / (1 / shape - trigamma(shape));
    const next = shape - change;
    shape = next > 0 ? next : shape / 2;
    if (Math.abs(change) < 1e-13 * shape) break;
  }
  return { family: 'gamma', shape, scale: mean / shape };
}

function fitLognormal(values: readonly number[]): DurationLaw {
  const logs = values.map(Math.log);
  const logMean = total(logs) / logs.length;
  const square = total(logs.map((log) => (log - logMean) ** 2)) / logs.length;
  return { family: 'lognormal', logMean, logStandardDeviation: Math.sqrt(square) };
}

/** With censored durations there is no closed form: for every shape the best mean is looked for. */
function fitByShape(family: 'gamma' | 'lognormal', sample: CensoredSample): DurationLaw {
  const [low, high] = SHAPES[family];
  const rough = (total(sample.values) + total(sample.censored)) / sample.values.length;
  const likelihood = likelihoodOfSample(family, sample);
  const bestMean = (shape: number): { mean: number; value: number } => {
    const found = maximize(
      (logMean) => likelihood(Math.exp(logMean), shape),
      Math.log(rough) - 4,
      Math.log(rough) + 8,
      1e-7,
    );
    return { mean: Math.exp(found.at), value: found.value };
  };
  const { at } = maximize(
    (logShape) => bestMean(Math.exp(logShape)).value,
    Math.log(low),
    Math.log(high),
    1e-6,
  );
  const shape = Math.exp(at);
  return lawOf(family, bestMean(shape).mean, shape);
}

/** Of the logarithm of a limit of the mean. */
const LIMIT_TOLERANCE = 1e-9;
/** Shapes among which is looked. */
const SHAPES: Readonly<Record<Exclude<DurationFamily, 'exponential'>, readonly [number, number]>> = {
  lognormal: [0.01, 5],
  gamma: [0.02, 5000],
  weibull: [0.05, 500],
};

/**
 * Means that the likelihood does not rule out: the exponential law has an exact interval, the others that of the
 * likelihood ratio, with the shape that fits best to each mean.
 * Source of the exact one: NIST/SEMATECH e-Handbook of Statistical Methods, section 8.4.5.1 (where the test ended at a time,
 * two more degrees of freedom for the lower limit).
 */
function meanInterval(
  family: DurationFamily,
  sample: CensoredSample,
  law: DurationLaw,
  most: number,
  level: number,
): Interval {
  const value = meanOfLaw(law);
  if (family === 'exponential') return exponentialMean(sample, level);
  const allowed = most - chiSquareQuantile(level, 1) / 2;
  const [lowShape, highShape] = SHAPES[family];
  const likelihood = likelihoodOfSample(family, sample);
  const profile = (mean: number): number =>
    maximize(
      (logShape) => likelihood(mean, Math.exp(logShape)),
      Math.log(lowShape),
      Math.log(highShape),
      1e-4,
    ).value - allowed;
  const far = 8;
  const low = root((log) => profile(Math.exp(log)), Math.log(value) - far, Math.log(value), LIMIT_TOLERANCE);
  const high = root(
    (log) => -profile(Math.exp(log)),
    Math.log(value),
    Math.log(value) + far,
    LIMIT_TOLERANCE,
  );
  return { value, low: Math.exp(low), high: Math.exp(high), level };
}

/** @throws RangeError when nothing was seen to its end */
export function exponentialMean(sample: CensoredSample, level: number): Interval {
  checkSample(sample, 1);
  checkLevel(level);
  const { values, censored } = sample;
  const seen = values.length;
  const time = total(values) + total(censored);
  const tail = (1 - level) / 2;
  const lower = 2 * seen + (censored.length === 0 ? 0 : 2);
  return {
    value: time / seen,
    low: (2 * time) / chiSquareQuantile(1 - tail, lower),
    high: (2 * time) / chiSquareQuantile(tail, 2 * seen),
    level,
  };
}

function total(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}
