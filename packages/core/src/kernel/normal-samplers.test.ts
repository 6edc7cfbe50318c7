import { normalCumulative } from '@buildweek/numbers';
import { describe, expect, it } from 'vitest';
import { CutNormalSampler, LognormalSampler } from './normal-samplers.ts';

describe('CutNormalSampler', () => {
  it('is the plain normal distribution when next to nothing is below zero', () => {
    // Standard normal quantiles, from memory: z(0.975) = 1.959963984540054, z(0.5) = 0.
    const sampler = new CutNormalSampler(100, 5);
    expect(sampler.sample(0.975)).toBeCloseTo(100 + 5 * 1.959963984540054, 12);
    expect(sampler.sample(0.5)).toBeCloseTo(100, 12);
  });

  it('is the half normal distribution when the mean is zero', () => {
    const sampler = new CutNormalSampler(0, 2);
    for (const u of [1e-6, 0.1, 0.5, 0.9, 1 - 1e-6]) {
      const x = sampler.sample(u);
      expect(Math.abs(2 * normalCumulative(x / 2) - 1 - u)).toBeLessThan(1e-13);
    }
  });

  it('tends to an exponential distribution when only the far tail is above zero', () => {
    // With mean −m and deviation 1 the tail behaves as exp(−m x) (Mills; NIST Digital Library 7.12.1).
    const sampler = new CutNormalSampler(-30, 1);
    for (const u of [0.01, 0.5, 0.99]) {
      expect(Math.abs(sampler.sample(u) / (-Math.log1p(-u) / 30) - 1)).toBeLessThan(0.005);
    }
  });

  it('stays at zero or above for the smallest draws', () => {
    for (const mean of [-20, -1, 0, 1e-9, 1, 7, 40]) {
      const drawn = new CutNormalSampler(mean, 1).sample(2 ** -33);
      expect(drawn).toBeGreaterThanOrEqual(0);
      expect(drawn).toBeLessThan(Math.max(mean, 0) + 1e-6);
    }
  });

  it('is finite for the largest double below 1', () => {
    for (const mean of [-20, 0, 0.09, 0.5, 7]) {
      expect(new CutNormalSampler(mean, 1).sample(1 - 2 ** -53)).toBeLessThan(mean + 30);
    }
  });
});

describe('LognormalSampler', () => {
  it('has its median at the exponential of the logarithmic mean', () => {
    expect(new LognormalSampler(0.7, 3).sample(0.5)).toBeCloseTo(Math.exp(0.7), 14);
  });

  it('gives two percentiles back from which it was made', () => {
    // 10 % below 2 h and 90 % below 8 h: logarithmic mean ln 4, deviation ln 2 / z(0.9), z(0.9) =
    // 1.2815515655446004 (from memory).
    const sampler = new LognormalSampler(Math.log(4), Math.log(2) / 1.2815515655446004);
    expect(sampler.sample(0.1)).toBeCloseTo(2, 12);
    expect(sampler.sample(0.9)).toBeCloseTo(8, 12);
  });
});
