import { betaQuantile, gammaQuantile } from '@buildweek/numbers';
import { describe, expect, it } from 'vitest';
import { HyperexponentialQuantile } from './hyperexponential-quantile.ts';
import { GammaSampler, HyperexponentialSampler, PertSampler } from './tabled-samplers.ts';

/** Worst relative difference over draws in the middle and at both ends. */
function worst(drawn: (u: number) => number, exact: (u: number) => number): number {
  let most = 0;
  const compare = (u: number): void => {
    most = Math.max(most, Math.abs(drawn(u) / exact(u) - 1));
  };
  for (let step = 0; step < 4000; step++) compare((step + 0.5) / 4000);
  for (let octave = 2; octave <= 32; octave++) {
    compare(1.3 * 2 ** -octave);
    compare(1 - 1.3 * 2 ** -octave);
  }
  return most;
}

describe('GammaSampler', () => {
  it('draws within 1e-4 of the exact inverse for shapes from 1 up, and within 5e-4 from 0.1 up', () => {
    for (const shape of [1, 1.5, 4, 30, 1000]) {
      const sampler = new GammaSampler(shape, 2);
      expect(
        worst(
          (u) => sampler.sample(u),
          (u) => 2 * gammaQuantile(u, shape),
        ),
      ).toBeLessThan(1.2e-4);
    }
    for (const shape of [0.1, 0.3, 0.7]) {
      const sampler = new GammaSampler(shape, 2);
      expect(
        worst(
          (u) => sampler.sample(u),
          (u) => 2 * gammaQuantile(u, shape),
        ),
      ).toBeLessThan(5e-4);
    }
  });
});

describe('PertSampler', () => {
  it('draws within 1e-4 of the width of the exact inverse, wherever the mode lies', () => {
    for (const mode of [2, 2.1, 3, 4.5, 6, 7]) {
      const sampler = new PertSampler(2, mode, 7);
      const [a, b] = [1 + (4 * (mode - 2)) / 5, 1 + (4 * (7 - mode)) / 5];
      expect(
        worst(
          (u) => (sampler.sample(u) - 2) / 5,
          (u) => betaQuantile(u, a, b),
        ),
      ).toBeLessThan(1e-4);
    }
  });
});

describe('HyperexponentialSampler', () => {
  it('draws within 1e-4 of the exact inverse', () => {
    const branches = [
      { probability: 0.1, mean: 5.5 },
      { probability: 0.9, mean: 0.5 },
    ];
    const sampler = new HyperexponentialSampler(branches);
    const quantile = new HyperexponentialQuantile(branches);
    expect(
      worst(
        (u) => sampler.sample(u),
        (u) => quantile.value(u),
      ),
    ).toBeLessThan(1e-4);
  });

  it('keeps the mean of branches far apart', () => {
    const sampler = new HyperexponentialSampler([
      { probability: 0.01, mean: 100 },
      { probability: 0.99, mean: 0.1 },
    ]);
    let mean = 0;
    const step = 1 / 128;
    for (let s = -34; s <= 34; s += step) {
      // u = 1 / (1 + exp(−s)), as in the test of the moments.
      mean += (sampler.sample(1 / (1 + Math.exp(-s))) * step) / ((1 + Math.exp(-s)) * (1 + Math.exp(s)));
    }
    expect(Math.abs(mean / 1.099 - 1)).toBeLessThan(1e-5);
  });
});
