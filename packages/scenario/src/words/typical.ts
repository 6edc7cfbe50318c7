import type { Distribution } from '@buildweek/model';
import { gammaFunction } from '@buildweek/numbers';

/**
 * What people plan with, hours: the usual value where the wording names one, else the mean as it was worded
 * (of a normal distribution the mean before it is cut at zero).
 */
export function typicalHours(distribution: Distribution): number {
  switch (distribution.kind) {
    case 'constant':
      return distribution.value;
    case 'uniform':
      return (distribution.low + distribution.high) / 2;
    case 'triangular':
    case 'pert':
      return distribution.mode;
    case 'normal':
    case 'exponential':
      return distribution.mean;
    case 'lognormal':
      return Math.exp(distribution.logMean + distribution.logStandardDeviation ** 2 / 2);
    case 'gamma':
      return distribution.shape * distribution.scale;
    case 'weibull':
      return distribution.scale * gammaFunction(1 + 1 / distribution.shape);
    case 'hyperexponential':
      return distribution.branches.reduce((sum, branch) => sum + branch.probability * branch.mean, 0);
    case 'measured':
      return distribution.values.reduce((sum, value) => sum + value, 0) / distribution.values.length;
  }
}
