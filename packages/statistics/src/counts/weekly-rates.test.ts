import { describe, expect, it } from 'vitest';
import { dispersionAbout, dispersionTest, fitNegativeBinomial } from './dispersion.ts';
import { exponentialTrend, sharesOfTrend } from './exponential-trend.ts';
import { overdispersedRate } from './overdispersed-rate.ts';
import { poissonRate } from './poisson-rate.ts';
import { laplaceTrend } from './trend-tests.ts';

describe('overdispersedRate', () => {
  it('is Garwood’s interval without variation', () => {
    const exact = poissonRate(17, 30, 0.95);
    expect(overdispersedRate(17, 30, 0, 0.95)).toEqual(exact);
    expect(overdispersedRate(0, 30, 0.5, 0.95).low).toBe(0);
  });

  it('is wider by the square root of what counts vary more', () => {
    const plain = overdispersedRate(100_000, 50, 0, 0.95);
    const wide = overdispersedRate(100_000, 50, 0.04, 0.95);
    // 2,000 a week that vary by 4 % have 1 + 2,000 · 0.0016 = 4.2 times the variance; Student's quantile of 49 degrees of freedom
    // is 2.00958, the normal one 1.95996.
    const factor = Math.sqrt(4.2) * (2.00958 / 1.95996);
    expect((wide.high - wide.low) / (plain.high - plain.low) / factor).toBeCloseTo(1, 2);
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
      expect(found.endOverMean.value).toBeCloseTo(growth === 0 ? 1 : growth / (1 - Math.exp(-growth)), 2);
    }
  });

  it('is less sure where counts vary more than Poisson counts', () => {
    const times = Array.from({ length: 400 }, (_, index) => (index + 0.5) / 8);
    const [plain, varied] = [1, 4].map((dispersion) => exponentialTrend(times, 50, 0.95, dispersion).growth);
    expect((varied?.high ?? 0) / (plain?.high ?? 1)).toBeCloseTo(2, 9);
    expect(laplaceTrend([...times, 49, 49.5], 50, 4).score).toBeCloseTo(
      laplaceTrend([...times, 49, 49.5], 50).score / 2,
      9,
    );
  });

  it('says what share of the events comes in each part of the period', () => {
    const flat = exponentialTrend([1, 3], 4, 0.95);
    expect(sharesOfTrend(flat, 4)).toEqual([0.25, 0.25, 0.25, 0.25].map((share) => expect.closeTo(share, 6)));
    const doubling = { ...flat, growth: { ...flat.growth, value: Math.log(2) } };
    // Proportional to 2^x, in halves: √2 − 1 and 2 − √2.
    expect(sharesOfTrend(doubling, 2)).toEqual([
      expect.closeTo(Math.SQRT2 - 1, 12),
      expect.closeTo(2 - Math.SQRT2, 12),
    ]);
  });

  it('needs two events', () => {
    expect(() => exponentialTrend([3], 10, 0.95)).toThrow(RangeError);
  });
});

describe('dispersionAbout', () => {
  const counts = [3, 7, 4, 9, 2, 6];

  it('is the usual test about the mean of the counts', () => {
    const mean = 31 / 6;
    const { index, pValue } = dispersionTest(counts);
    expect(
      dispersionAbout(
        counts,
        Array.from(counts, () => mean),
        1,
      ),
    ).toMatchObject({
      index: expect.closeTo(index, 12),
      pValue: expect.closeTo(pValue, 12),
    });
  });

  it('does not take a trend for variation', () => {
    const growing = [10, 14, 20, 28, 40, 57];
    expect(dispersionTest(growing).pValue).toBeLessThan(1e-6);
    expect(dispersionAbout(growing, growing, 2).index).toBe(0);
    expect(fitNegativeBinomial(growing).shape).toBeLessThan(10);
    expect(fitNegativeBinomial(growing, growing).shape).toBe(Infinity);
  });

  it('needs more counts than parameters', () => {
    expect(() => dispersionAbout([1, 2], [1, 2], 2)).toThrow(RangeError);
  });
});
