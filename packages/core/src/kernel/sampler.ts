import type { Distribution } from '@buildweek/model';
import {
  ConstantSampler,
  ExponentialSampler,
  TriangularSampler,
  UniformSampler,
  WeibullSampler,
} from './closed-form-samplers.ts';
import { MeasuredSampler } from './measured-sampler.ts';
import { CutNormalSampler, LognormalSampler } from './normal-samplers.ts';
import { GammaSampler, HyperexponentialSampler, PertSampler } from './tabled-samplers.ts';

/** Draws durations by inversion: one uniform number for each draw, so that two labs stay in step. */
export interface Sampler {
  /**
   * The duration below which a draw falls with probability u. It never decreases as u grows, and calling it
   * allocates nothing.
   *
   * @param u strictly between 0 and 1
   * @returns hours, not rounded, at least 0
   */
  sample(u: number): number;
}

/** Where a sampler is tried before it is given out: the smallest draw of 32 bits, the middle, the largest. */
const PROBES = [2 ** -33, 0.5, 1 - 2 ** -33];

/**
 * @param distribution kind and parameters, in hours
 * @throws RangeError when the parameters give durations that are negative or no numbers
 */
export function createSampler(distribution: Distribution): Sampler {
  const sampler = samplerOf(distribution);
  for (const u of PROBES) {
    const hours = sampler.sample(u);
    if (!(hours >= 0 && hours < Number.POSITIVE_INFINITY)) {
      throw new RangeError(
        `A distribution gives a duration of ${hours} hours: ${JSON.stringify(distribution)}`,
      );
    }
  }
  return sampler;
}

function samplerOf(distribution: Distribution): Sampler {
  switch (distribution.kind) {
    case 'constant':
      return new ConstantSampler(distribution.value);
    case 'uniform':
      return new UniformSampler(distribution.low, distribution.high);
    case 'triangular':
      return new TriangularSampler(distribution.low, distribution.mode, distribution.high);
    case 'pert':
      return new PertSampler(distribution.low, distribution.mode, distribution.high);
    case 'normal':
      return new CutNormalSampler(distribution.mean, distribution.standardDeviation);
    case 'lognormal':
      return new LognormalSampler(distribution.logMean, distribution.logStandardDeviation);
    case 'exponential':
      return new ExponentialSampler(distribution.mean);
    case 'gamma':
      return new GammaSampler(distribution.shape, distribution.scale);
    case 'weibull':
      return new WeibullSampler(distribution.shape, distribution.scale);
    case 'hyperexponential':
      return new HyperexponentialSampler(distribution.branches);
    case 'measured':
      return new MeasuredSampler(distribution.values);
  }
}
