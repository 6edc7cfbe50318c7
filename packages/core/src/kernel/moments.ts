import type { Distribution } from '@buildweek/model';
import { gammaFunction, normalCumulative } from '@buildweek/numbers';
import { pertShapes } from './pert-shapes.ts';

/**
 * Exact mean of a distribution, in hours. Formulas: N. L. Johnson, S. Kotz, N. Balakrishnan, "Continuous
 * Univariate Distributions", chapters of the families (from memory).
 */
export function meanOf(distribution: Distribution): number {
  switch (distribution.kind) {
    case 'constant':
      return distribution.value;
    case 'uniform':
      return (distribution.low + distribution.high) / 2;
    case 'triangular':
      return (distribution.low + distribution.mode + distribution.high) / 3;
    case 'pert':
      return (distribution.low + 4 * distribution.mode + distribution.high) / 6;
    case 'normal':
      return cutNormalMoments(distribution.mean, distribution.standardDeviation).mean;
    case 'lognormal':
      return Math.exp(distribution.logMean + distribution.logStandardDeviation ** 2 / 2);
    case 'exponential':
      return distribution.mean;
    case 'gamma':
      return distribution.shape * distribution.scale;
    case 'weibull':
      return distribution.scale * gammaFunction(1 + 1 / distribution.shape);
    case 'hyperexponential':
      return weighted(distribution.branches, (mean) => mean);
    case 'measured':
      return average(distribution.values);
  }
}

/** Exact variance of a distribution, in hours squared; sources as for {@link meanOf}. */
export function varianceOf(distribution: Distribution): number {
  switch (distribution.kind) {
    case 'constant':
      return 0;
    case 'uniform':
      return (distribution.high - distribution.low) ** 2 / 12;
    case 'triangular': {
      const width = distribution.high - distribution.low;
      const rising = distribution.mode - distribution.low;
      return (width * width - width * rising + rising * rising) / 18;
    }
    case 'pert': {
      const { a, b } = pertShapes(distribution.low, distribution.mode, distribution.high);
      return ((distribution.high - distribution.low) ** 2 * a * b) / ((a + b) ** 2 * (a + b + 1));
    }
    case 'normal':
      return cutNormalMoments(distribution.mean, distribution.standardDeviation).variance;
    case 'lognormal':
      return Math.expm1(distribution.logStandardDeviation ** 2) * meanOf(distribution) ** 2;
    case 'exponential':
      return distribution.mean ** 2;
    case 'gamma':
      return distribution.shape * distribution.scale ** 2;
    case 'weibull': {
      const first = gammaFunction(1 + 1 / distribution.shape);
      const second = gammaFunction(1 + 2 / distribution.shape);
      return distribution.scale ** 2 * (second - first * first);
    }
    case 'hyperexponential':
      return weighted(distribution.branches, (mean) => 2 * mean * mean) - meanOf(distribution) ** 2;
    case 'measured': {
      const mean = average(distribution.values);
      return average(distribution.values.map((value) => (value - mean) ** 2));
    }
  }
}

/** Normal conditional on being positive; `hazard` is the inverse Mills ratio at the cut. */
function cutNormalMoments(mean: number, standardDeviation: number): { mean: number; variance: number } {
  if (standardDeviation === 0) return { mean, variance: 0 };
  const cut = -mean / standardDeviation;
  const hazard = Math.exp(-(cut * cut) / 2) / Math.sqrt(2 * Math.PI) / normalCumulative(-cut);
  return {
    mean: mean + standardDeviation * hazard,
    variance: standardDeviation ** 2 * (1 + cut * hazard - hazard * hazard),
  };
}

function weighted(
  branches: readonly { readonly probability: number; readonly mean: number }[],
  value: (mean: number) => number,
): number {
  const total = branches.reduce((sum, branch) => sum + branch.probability, 0);
  return branches.reduce((sum, branch) => sum + (branch.probability / total) * value(branch.mean), 0);
}

function average(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
