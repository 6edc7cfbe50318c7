import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lawOf } from './families.ts';
import { fitFamily, logLikelihoodOf } from './fit-durations.ts';
import { likelihoodOfSample } from './likelihood.ts';

describe('likelihoodOfSample', () => {
  it('is the sum over all durations, without going through them', () => {
    const duration = fc.double({ min: 0.5, max: 50, noNaN: true });
    fc.assert(
      fc.property(
        fc.constantFrom<'lognormal' | 'gamma' | 'weibull'>('lognormal', 'gamma', 'weibull'),
        fc.array(duration, { minLength: 1, maxLength: 20 }),
        fc.array(duration, { maxLength: 5 }),
        duration,
        fc.double({ min: 0.4, max: 3, noNaN: true }),
        (family, values, censored, mean, shape) => {
          const expected = logLikelihoodOf(lawOf(family, mean, shape), { values, censored });
          const found = likelihoodOfSample(family, { values, censored })(mean, shape);
          // Far out the probability of an open one is 0 in doubles, and both are −Infinity.
          return found === expected || Math.abs(found - expected) < 1e-8 * Math.max(1, Math.abs(expected));
        },
      ),
    );
  });

  it('is highest where R finds it, with durations that still go on', () => {
    // Source: R 4.2, survival::survreg and fitdistrplus::fitdistcens with a relative tolerance of 1e-15.
    const sample = { values: [4, 7, 9, 12, 15, 22, 30, 41], censored: [10, 35, 60] };
    expect(fitFamily('lognormal', sample)).toEqual({
      family: 'lognormal',
      logMean: expect.closeTo(3.005378, 4),
      logStandardDeviation: expect.closeTo(0.968122, 4),
    });
    expect(logLikelihoodOf(fitFamily('lognormal', sample), sample)).toBeCloseTo(-34.4723920375, 8);
    expect(logLikelihoodOf(fitFamily('weibull', sample), sample)).toBeCloseTo(-35.1850791117, 8);
    expect(logLikelihoodOf(fitFamily('gamma', sample), sample)).toBeCloseTo(-35.0488675068, 8);
    expect(logLikelihoodOf(fitFamily('exponential', sample), sample)).toBeCloseTo(-35.3745333509, 8);
  });
});
