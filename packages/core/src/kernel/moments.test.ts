import type { Distribution } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import { meanOf, varianceOf } from './moments.ts';
import { createSampler } from './sampler.ts';

const FAMILIES: readonly (readonly [Distribution, number])[] = [
  [{ kind: 'constant', value: 2.5 }, 1e-12],
  [{ kind: 'uniform', low: 2, high: 7 }, 1e-9],
  [{ kind: 'triangular', low: 2, mode: 3, high: 7 }, 1e-7],
  [{ kind: 'triangular', low: 2, mode: 2, high: 7 }, 1e-7],
  [{ kind: 'pert', low: 10 / 60, mode: 20 / 60, high: 45 / 60 }, 1e-5],
  [{ kind: 'pert', low: 2, mode: 7, high: 7 }, 1e-5],
  [{ kind: 'normal', mean: 10, standardDeviation: 1 }, 1e-9],
  [{ kind: 'normal', mean: 1, standardDeviation: 2 }, 1e-9],
  [{ kind: 'normal', mean: -4, standardDeviation: 2 }, 1e-9],
  [{ kind: 'lognormal', logMean: 0.9, logStandardDeviation: 0.6 }, 1e-9],
  [{ kind: 'exponential', mean: 3 }, 1e-9],
  [{ kind: 'gamma', shape: 4, scale: 0.75 }, 1e-5],
  [{ kind: 'gamma', shape: 0.5, scale: 2 }, 1e-5],
  [{ kind: 'weibull', shape: 2.1, scale: 113 }, 1e-9],
  [{ kind: 'weibull', shape: 0.8, scale: 5 }, 1e-9],
  [
    {
      kind: 'hyperexponential',
      branches: [
        { probability: 0.1, mean: 5.5 },
        { probability: 0.9, mean: 0.5 },
      ],
    },
    1e-6,
  ],
];

/**
 * Integral of f(sample(u)) over u from 0 to 1, by the trapezoidal rule after u = 1 / (1 + exp(−s)): the
 * integrand falls off exponentially to both sides, where the rule converges fastest.
 */
function integrate(distribution: Distribution, f: (x: number) => number): number {
  const sampler = createSampler(distribution);
  const step = 1 / 128;
  let sum = 0;
  for (let s = -34; s <= 34; s += step) {
    const u = 1 / (1 + Math.exp(-s));
    sum += f(sampler.sample(u)) * u * (1 / (1 + Math.exp(s))) * step;
  }
  return sum;
}

/** Squared coefficient of variation. */
function squaredVariationOf(distribution: Distribution): number {
  return varianceOf(distribution) / meanOf(distribution) ** 2;
}

describe('meanOf and varianceOf', () => {
  it('agree with the integral of what the sampler draws over all uniform numbers', () => {
    for (const [distribution, tolerance] of FAMILIES) {
      const mean = integrate(distribution, (x) => x);
      const variance = integrate(distribution, (x) => (x - mean) ** 2);
      const what = JSON.stringify(distribution);
      expect(Math.abs(meanOf(distribution) / mean - 1), what).toBeLessThan(tolerance);
      expect(Math.abs(varianceOf(distribution) - variance), what).toBeLessThan(
        20 * tolerance * Math.max(variance, mean * mean * 1e-3),
      );
    }
  });

  it('give the published moments', () => {
    // Case S18 of the collected checks (elementary; recomputed).
    const lognormal: Distribution = {
      kind: 'lognormal',
      logMean: 0.895879734614028,
      logStandardDeviation: Math.sqrt(0.405465108108164),
    };
    expect(meanOf(lognormal)).toBeCloseTo(3, 12);
    expect(squaredVariationOf(lognormal)).toBeCloseTo(0.5, 12);
    const gamma: Distribution = { kind: 'gamma', shape: 4, scale: 0.75 };
    expect(meanOf(gamma)).toBe(3);
    expect(squaredVariationOf(gamma)).toBe(0.25);
    const weibull: Distribution = { kind: 'weibull', shape: 2.10134909468854, scale: 112.906338953961 };
    expect(meanOf(weibull)).toBeCloseTo(100, 10);
    expect(squaredVariationOf(weibull)).toBeCloseTo(0.25, 11);
    const triangular: Distribution = { kind: 'triangular', low: 2, mode: 3, high: 7 };
    expect(meanOf(triangular)).toBe(4);
    expect(varianceOf(triangular)).toBeCloseTo(1.16666666666667, 13);
    const pert: Distribution = { kind: 'pert', low: 2, mode: 3, high: 7 };
    expect(meanOf(pert)).toBe(3.5);
    expect(varianceOf(pert)).toBeCloseTo(0.75, 13);
    const uniform: Distribution = { kind: 'uniform', low: 2, high: 7 };
    expect(meanOf(uniform)).toBe(4.5);
    expect(varianceOf(uniform)).toBeCloseTo(2.08333333333333, 13);
    const p = 0.887298334620742;
    const hyperexponential: Distribution = {
      kind: 'hyperexponential',
      branches: [
        { probability: p, mean: 1 / 1.77459666924148 },
        { probability: 1 - p, mean: 1 / 0.225403330758517 },
      ],
    };
    expect(meanOf(hyperexponential)).toBeCloseTo(1, 12);
    expect(squaredVariationOf(hyperexponential)).toBeCloseTo(4, 11);
  });

  it('give the second moments of the published service times', () => {
    // Case Q08 of the collected checks (Pollaczek-Khinchine; closed form): E[S²] is 13/12, 6.5 and 2.
    const second = (distribution: Distribution): number =>
      varianceOf(distribution) + meanOf(distribution) ** 2;
    expect(second({ kind: 'uniform', low: 0.5, high: 1.5 })).toBeCloseTo(13 / 12, 13);
    expect(
      second({
        kind: 'hyperexponential',
        branches: [
          { probability: 0.1, mean: 5.5 },
          { probability: 0.9, mean: 0.5 },
        ],
      }),
    ).toBeCloseTo(6.5, 12);
    expect(second({ kind: 'measured', values: [0.5, 0.5, 0.5, 0.5, 3] })).toBeCloseTo(2, 13);
  });

  it('take measured values as they are, each equally likely', () => {
    const measured: Distribution = { kind: 'measured', values: [4, 1, 1, 2] };
    expect(meanOf(measured)).toBe(2);
    expect(varianceOf(measured)).toBe(1.5);
  });
});
