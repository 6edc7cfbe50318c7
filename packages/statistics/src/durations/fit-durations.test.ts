import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { GENERATOR_FANS } from '../test-data/generator-fans.ts';
import { SERVING_SIZES } from '../test-data/serving-sizes.ts';
import { lawOf, logDensity, logSurvival, meanOfLaw, quantileOfLaw } from './families.ts';
import { exponentialMean, fitDurations, fitFamily, logLikelihoodOf } from './fit-durations.ts';

function close(found: number, expected: number, relative = 1e-6): void {
  expect(Math.abs(found / expected - 1)).toBeLessThan(relative);
}

/** 20 units, ten of which were still running at 500 h. Source: NIST/SEMATECH e-Handbook of Statistical Methods, section 8.4.1.2 (data from memory). */
const HANDBOOK = {
  values: [54, 187, 216, 240, 244, 335, 361, 373, 375, 386],
  censored: Array.from({ length: 10 }, () => 500),
};

describe('fitFamily', () => {
  it('fits the Weibull law with right-censoring as the handbook does', () => {
    const law = fitFamily('weibull', HANDBOOK);
    if (law.family !== 'weibull') throw new Error('another family');
    close(law.shape, 1.720797261);
    close(law.scale, 606.527558);
    expect(logLikelihoodOf(law, HANDBOOK)).toBeCloseTo(-75.13461816, 6);
  });

  it('fits the gamma law to the failures of air conditioning', () => {
    // Source: A. C. Davison and D. V. Hinkley, Bootstrap Methods and their Application (1997), example 1.1.
    const sample = { values: [3, 5, 7, 18, 43, 85, 91, 98, 100, 130, 230, 487], censored: [] };
    const law = fitFamily('gamma', sample);
    if (law.family !== 'gamma') throw new Error('another family');
    close(law.shape, 0.7064931748);
    close(law.scale, 152.9856723);
    const { value, low, high } = exponentialMean(sample, 0.95);
    close(value, 108.0833333);
    close(low, 65.89764567);
    close(high, 209.1741455);
  });

  it('fits fans of diesel generators, of which most never failed', () => {
    // Source: W. Nelson, Applied Life Data Analysis (1982); recomputed with R, survival.
    const { value, low, high } = exponentialMean(GENERATOR_FANS, 0.95);
    close(value, 344_440 / 12);
    close(low, 16_431.96348);
    close(high, 55_549.68595);
    const law = fitFamily('weibull', GENERATOR_FANS);
    if (law.family !== 'weibull') throw new Error('another family');
    close(law.shape, 1.05844585);
    close(law.scale, 26_296.84517);
    expect(logLikelihoodOf(law, GENERATOR_FANS)).toBeCloseTo(-135.1527199, 6);
  });

  it('finds the same law for censored and whole samples where nothing is censored', () => {
    // With one value censored at next to nothing the censored way of fitting is taken, and nothing is learned from it.
    for (const family of ['gamma', 'lognormal'] as const) {
      const whole = fitFamily(family, { values: SERVING_SIZES, censored: [] });
      const same = fitFamily(family, { values: SERVING_SIZES, censored: [1e-9] });
      close(meanOfLaw(same), meanOfLaw(whole), 1e-4);
      close(quantileOfLaw(same, 0.95), quantileOfLaw(whole, 0.95), 1e-3);
    }
  });
});

describe('fitDurations', () => {
  it('puts families in the order of Akaike’s criterion, as for 254 serving sizes', () => {
    // Source: M. L. Delignette-Muller and C. Dutang, Journal of Statistical Software 64 (2015), no. 4; recomputed.
    const found = fitDurations(
      { values: SERVING_SIZES, censored: [] },
      ['weibull', 'gamma', 'lognormal'],
      0.95,
    );
    if (found.kind !== 'fitted') throw new Error('not fitted');
    expect(found.fits.map(({ law }) => law.family)).toEqual(['gamma', 'weibull', 'lognormal']);
    const [gamma, weibull, lognormal] = found.fits;
    expect(gamma?.aic).toBeCloseTo(2511.250227, 4);
    expect(weibull?.aic).toBeCloseTo(2514.44944, 4);
    expect(lognormal?.aic).toBeCloseTo(2526.638597, 4);
    expect(found.fits.map(({ isAboutAsGood }) => isAboutAsGood)).toEqual([true, false, false]);
    if (gamma?.law.family !== 'gamma' || weibull?.law.family !== 'weibull') throw new Error('another family');
    close(gamma.law.shape, 4.008339032, 1e-5);
    close(1 / gamma.law.scale, 0.05442735561, 1e-5);
    close(weibull.law.shape, 2.185612332, 1e-5);
    close(weibull.law.scale, 83.34666883, 1e-5);
    if (lognormal?.law.family !== 'lognormal') throw new Error('another family');
    close(lognormal.law.logMean, 4.169370089);
    close(lognormal.law.logStandardDeviation, 0.5366095134);
  });

  it('gives the mean an interval that holds it, narrower with more durations', () => {
    const few = fitDurations({ values: SERVING_SIZES.slice(0, 40), censored: [] }, ['gamma'], 0.95);
    const many = fitDurations({ values: SERVING_SIZES, censored: [] }, ['gamma'], 0.95);
    if (few.kind !== 'fitted' || many.kind !== 'fitted') throw new Error('not fitted');
    const [wide, narrow] = [few.fits[0]?.mean, many.fits[0]?.mean];
    if (wide === undefined || narrow === undefined) throw new Error('no fit');
    expect(narrow.low).toBeLessThan(narrow.value);
    expect(narrow.high).toBeGreaterThan(narrow.value);
    expect(narrow.high - narrow.low).toBeLessThan(wide.high - wide.low);
    // About 1.96 standard errors on either side: 35.88 / sqrt(254) = 2.25.
    close((narrow.high - narrow.low) / 2, 1.96 * 2.25, 0.1);
  });

  it('fits nothing to fewer than ten durations, and says so', () => {
    const found = fitDurations({ values: [3, 1, 2], censored: [4] }, ['gamma'], 0.95);
    expect(found).toMatchObject({ kind: 'range', low: 1, mode: 2, high: 3, seen: 3, censored: 1 });
    if (found.kind === 'range') expect(found.warning).toContain('3 durations are too few');
  });

  it('refuses durations that are none', () => {
    expect(() => fitDurations({ values: [], censored: [] }, ['gamma'], 0.95)).toThrow(RangeError);
    expect(() => fitDurations({ values: [1, -1], censored: [] }, ['gamma'], 0.95)).toThrow(RangeError);
  });
});

describe('The laws', () => {
  const laws = fc
    .record({
      family: fc.constantFrom('lognormal', 'gamma', 'weibull', 'exponential'),
      mean: fc.double({ min: 0.01, max: 1000, noNaN: true }),
      shape: fc.double({ min: 0.3, max: 4, noNaN: true }),
    })
    .map(({ family, mean, shape }) => ({ law: lawOf(family as 'gamma', mean, shape), mean }));

  it('have the mean that they were made with', () => {
    fc.assert(fc.property(laws, ({ law, mean }) => Math.abs(meanOfLaw(law) / mean - 1) < 1e-9));
  });

  it('have densities that are the slopes of their survival', () => {
    fc.assert(
      fc.property(laws, fc.double({ min: 0.05, max: 0.95, noNaN: true }), ({ law }, p) => {
        const x = quantileOfLaw(law, p);
        const step = x * 1e-5;
        const slope =
          (Math.exp(logSurvival(law, x - step)) - Math.exp(logSurvival(law, x + step))) / (2 * step);
        return Math.abs(slope / Math.exp(logDensity(law, x)) - 1) < 1e-4;
      }),
    );
  });

  it('survive their quantiles with the probability that is left', () => {
    fc.assert(
      fc.property(laws, fc.double({ min: 0.01, max: 0.99, noNaN: true }), ({ law }, p) => {
        return Math.abs(Math.exp(logSurvival(law, quantileOfLaw(law, p))) - (1 - p)) < 1e-6;
      }),
    );
  });
});
