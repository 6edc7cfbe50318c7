import { describe, expect, it } from 'vitest';
import { exponentialTrend } from './exponential-trend.ts';
import { overdispersedRate } from './overdispersed-rate.ts';
import { poissonRate } from './poisson-rate.ts';

describe('overdispersedRate', () => {
  it('is Garwood’s interval without variation', () => {
    const exact = poissonRate(17, 30, 0.95);
    expect(overdispersedRate(17, 30, 0, 0.95)).toEqual(exact);
    expect(overdispersedRate(0, 30, 0.5, 0.95).low).toBe(0);
  });

  it('is wider by the square root of what counts vary more', () => {
    const plain = overdispersedRate(1000, 50, 0, 0.95);
    const wide = overdispersedRate(1000, 50, 0.4, 0.95);
    // 20 a week that vary by 40 % have 1 + 20 · 0.16 = 4.2 times the variance.
    expect((wide.high - wide.low) / (plain.high - plain.low) / Math.sqrt(4.2)).toBeCloseTo(1, 1);
  });
});

describe('exponentialTrend', () => {
  it('finds the growth of events at the quantiles of an exponential spread', () => {
    for (const growth of [-1.5, 0, 0.7, 3]) {
      const position = (u: number): number =>
        growth === 0 ? u : Math.log1p(u * Math.expm1(growth)) / growth;
      const times = Array.from({ length: 2000 }, (_, index) => 52 * position((index + 0.5) / 2000));
      const found = exponentialTrend(times, 52, 0.95);
      expect(found.growth.value).toBeCloseTo(growth, 2);
      expect(found.growth.low).toBeLessThan(growth);
      expect(found.growth.high).toBeGreaterThan(growth);
      expect(found.endOverMean).toBeCloseTo(growth === 0 ? 1 : growth / (1 - Math.exp(-growth)), 2);
    }
  });

  it('needs two events', () => {
    expect(() => exponentialTrend([3], 10, 0.95)).toThrow(RangeError);
  });
});
