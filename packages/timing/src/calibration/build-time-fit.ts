import type { BuildTimeModel, Distribution } from '@buildweek/model';

/** Where the value of a parameter comes from. */
export type ParameterOrigin =
  /** From the measured builds. */
  | 'fitted'
  /** The measured builds gave one factor for several parameters, which keep their ratio in the start model. */
  | 'in ratio'
  /** The measured builds say nothing about it. */
  | 'start value'
  /** The measured builds would put it below zero. */
  | 'zero';

export interface FittedParameter {
  /** Key in the model. */
  readonly name: string;
  readonly value: number;
  readonly start: number;
  readonly origin: ParameterOrigin;
  /** In the unit of the value; null when nothing was fitted. */
  readonly standardError: number | null;
  /** Whether the value lies in the usual range of BUILD_TIME_PARAMETERS. */
  readonly isUsual: boolean;
}

/** What a fit of a build time model to measured builds says. */
export interface BuildTimeFit {
  /** The start model with the fitted parameters; settings (layers, walls, infill, bedding) are unchanged. */
  readonly model: BuildTimeModel;
  /** True print time over the estimated one: lognormal with mean 1, or constant when every build is met exactly. */
  readonly factor: Distribution;
  readonly builds: number;
  readonly degreesOfFreedom: number;
  /** Standard deviation of the logarithm of measured over estimated print hours: 0.1 is about 10 %. */
  readonly spread: number;
  /** Where it lies with 90 % confidence, from so few builds (chi-square). */
  readonly spreadLow: number;
  readonly spreadHigh: number;
  readonly parameters: readonly FittedParameter[];
  /** Pairs that keep their ratio, since the builds cannot tell what each takes: they rise and fall together. */
  readonly notToldApart: readonly (readonly [string, string])[];
  /** Share of the variance of the print hours that is explained; null when all builds took the same time. */
  readonly explained: number | null;
  /** Measured over estimated print hours of every build. */
  readonly ratios: readonly number[];
  /** Share by which the estimate is off: in the middle, and at most. */
  readonly medianError: number;
  readonly largestError: number;
}
