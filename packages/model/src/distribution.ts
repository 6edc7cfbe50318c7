/**
 * A distribution of durations, as kind and parameters. All parameters that are durations are in hours.
 * `core` turns it into a sampler that works by inversion.
 */
export type Distribution =
  | { readonly kind: 'constant'; readonly value: number }
  | { readonly kind: 'uniform'; readonly low: number; readonly high: number }
  | { readonly kind: 'triangular'; readonly low: number; readonly mode: number; readonly high: number }
  /** Beta on [low, high] with shape weight 4 on the mode (PERT). */
  | { readonly kind: 'pert'; readonly low: number; readonly mode: number; readonly high: number }
  /** Normal, conditional on being positive: the part below zero is cut off, so the mean is above `mean`. */
  | { readonly kind: 'normal'; readonly mean: number; readonly standardDeviation: number }
  /** exp(Normal(logMean, logStandardDeviation)). */
  | { readonly kind: 'lognormal'; readonly logMean: number; readonly logStandardDeviation: number }
  | { readonly kind: 'exponential'; readonly mean: number }
  /** Gamma; Erlang is the case of a whole shape. */
  | { readonly kind: 'gamma'; readonly shape: number; readonly scale: number }
  | { readonly kind: 'weibull'; readonly shape: number; readonly scale: number }
  | { readonly kind: 'hyperexponential'; readonly branches: readonly HyperexponentialBranch[] }
  /** Each value is equally likely. */
  | { readonly kind: 'measured'; readonly values: readonly number[] };

/** One branch of a hyperexponential distribution: chosen with `probability`, then exponential. */
export interface HyperexponentialBranch {
  readonly probability: number;
  /** Hours. */
  readonly mean: number;
}

/** How long something takes: the distribution, and what people expect beforehand. */
export interface Duration {
  readonly distribution: Distribution;
  /** Hours; what a person would plan with. The fit into a shift is judged on this, never on the draw. */
  readonly typicalHours: number;
}

/** A distribution over whole numbers from 1 up: pieces of a job, jobs of a burst. */
export type CountDistribution =
  | { readonly kind: 'fixed'; readonly value: number }
  | { readonly kind: 'uniform'; readonly low: number; readonly high: number }
  | { readonly kind: 'list'; readonly values: readonly number[] }
  /** Geometric on 1, 2, 3, … with the given mean. */
  | { readonly kind: 'geometric'; readonly mean: number };
