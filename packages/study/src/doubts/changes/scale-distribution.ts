import type { AttendedWork, Distribution, Duration } from '@buildweek/model';

/**
 * The same distribution with all its values so many times as large. The draw for a uniform number is that of the
 * distribution it came from, times the factor, so that two labs on the same seed stay in step.
 *
 * @param factor above 0
 */
export function scaleDistribution(distribution: Distribution, factor: number): Distribution {
  switch (distribution.kind) {
    case 'constant':
      return { ...distribution, value: distribution.value * factor };
    case 'uniform':
      return { ...distribution, low: distribution.low * factor, high: distribution.high * factor };
    case 'triangular':
    case 'pert':
      return {
        ...distribution,
        low: distribution.low * factor,
        mode: distribution.mode * factor,
        high: distribution.high * factor,
      };
    case 'normal':
      return {
        ...distribution,
        mean: distribution.mean * factor,
        standardDeviation: distribution.standardDeviation * factor,
      };
    case 'lognormal':
      return { ...distribution, logMean: distribution.logMean + Math.log(factor) };
    case 'exponential':
      return { ...distribution, mean: distribution.mean * factor };
    case 'gamma':
    case 'weibull':
      return { ...distribution, scale: distribution.scale * factor };
    case 'hyperexponential':
      return {
        ...distribution,
        branches: distribution.branches.map((branch) => ({ ...branch, mean: branch.mean * factor })),
      };
    case 'measured':
      return { ...distribution, values: distribution.values.map((value) => value * factor) };
  }
}

/** What takes so many times as long; people expect it to. */
export function scaleDuration(duration: Duration, factor: number): Duration {
  return {
    distribution: scaleDistribution(duration.distribution, factor),
    typicalHours: duration.typicalHours * factor,
  };
}

export function scaleWork(work: AttendedWork, factor: number): AttendedWork {
  return { ...work, duration: scaleDuration(work.duration, factor) };
}
