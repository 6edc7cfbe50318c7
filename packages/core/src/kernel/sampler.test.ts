import type { Distribution } from '@buildweek/model';
import { normalCumulative, regularizedBeta } from '@buildweek/numbers';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createSampler } from './sampler.ts';

const hours = fc.double({ min: 0.01, max: 200, noNaN: true });
const ascending = fc.tuple(hours, hours, hours).map((three) => three.sort((a, b) => a - b));
const shape = fc.double({ min: 0.2, max: 30, noNaN: true });
const uniform = fc.double({ min: 2 ** -33, max: 1 - 2 ** -33, noNaN: true });

const distribution: fc.Arbitrary<Distribution> = fc.oneof(
  hours.map((value): Distribution => ({ kind: 'constant', value })),
  ascending.map(([low = 0, , high = 0]): Distribution => ({ kind: 'uniform', low, high })),
  ascending.map(([low = 0, mode = 0, high = 0]): Distribution => ({ kind: 'triangular', low, mode, high })),
  ascending.map(([low = 0, mode = 0, high = 0]): Distribution => ({ kind: 'pert', low, mode, high })),
  fc
    .tuple(fc.double({ min: -20, max: 200, noNaN: true }), fc.double({ min: 1, max: 50, noNaN: true }))
    .map(([mean, standardDeviation]): Distribution => ({ kind: 'normal', mean, standardDeviation })),
  fc.tuple(fc.double({ min: -3, max: 4, noNaN: true }), fc.double({ min: 0, max: 2, noNaN: true })).map(
    ([logMean, logStandardDeviation]): Distribution => ({
      kind: 'lognormal',
      logMean,
      logStandardDeviation,
    }),
  ),
  hours.map((mean): Distribution => ({ kind: 'exponential', mean })),
  fc.tuple(shape, hours).map(([first, scale]): Distribution => ({ kind: 'gamma', shape: first, scale })),
  fc.tuple(shape, hours).map(([first, scale]): Distribution => ({ kind: 'weibull', shape: first, scale })),
  fc
    .array(fc.record({ probability: fc.double({ min: 0.01, max: 1, noNaN: true }), mean: hours }), {
      minLength: 1,
      maxLength: 4,
    })
    .map((branches): Distribution => ({ kind: 'hyperexponential', branches })),
  fc.array(hours, { minLength: 1 }).map((values): Distribution => ({ kind: 'measured', values })),
);

/** The probability that each family gives to durations up to x: formulas of its own, not the inverse. */
const CUMULATIVES: readonly (readonly [Distribution, (x: number) => number, number])[] = [
  [{ kind: 'uniform', low: 2, high: 7 }, (x) => (x - 2) / 5, 1e-14],
  [
    { kind: 'triangular', low: 2, mode: 3, high: 7 },
    (x) => (x < 3 ? (x - 2) ** 2 / 5 : 1 - (7 - x) ** 2 / 20),
    1e-14,
  ],
  [{ kind: 'pert', low: 2, mode: 3, high: 7 }, (x) => regularizedBeta((x - 2) / 5, 1.8, 4.2), 1e-4],
  [
    { kind: 'normal', mean: 1, standardDeviation: 2 },
    (x) => 1 - (1 - normalCumulative((x - 1) / 2)) / (1 - normalCumulative(-0.5)),
    1e-12,
  ],
  [
    { kind: 'normal', mean: -6, standardDeviation: 2 },
    (x) => 1 - normalCumulative(-(x + 6) / 2) / normalCumulative(-3),
    1e-12,
  ],
  [
    { kind: 'lognormal', logMean: 0.9, logStandardDeviation: 0.6 },
    (x) => normalCumulative((Math.log(x) - 0.9) / 0.6),
    1e-12,
  ],
  [{ kind: 'exponential', mean: 3 }, (x) => 1 - Math.exp(-x / 3), 1e-14],
  [
    { kind: 'gamma', shape: 4, scale: 0.75 },
    (x) => {
      const y = x / 0.75;
      return 1 - Math.exp(-y) * (1 + y + y ** 2 / 2 + y ** 3 / 6);
    },
    1e-4,
  ],
  [{ kind: 'gamma', shape: 0.5, scale: 2 }, (x) => 2 * normalCumulative(Math.sqrt(x)) - 1, 1e-4],
  [{ kind: 'weibull', shape: 2.5, scale: 80 }, (x) => 1 - Math.exp(-((x / 80) ** 2.5)), 1e-14],
  [
    {
      kind: 'hyperexponential',
      branches: [
        { probability: 0.1, mean: 5.5 },
        { probability: 0.9, mean: 0.5 },
      ],
    },
    (x) => 1 - 0.1 * Math.exp(-x / 5.5) - 0.9 * Math.exp(-x / 0.5),
    1e-4,
  ],
];

describe('createSampler', () => {
  it('inverts the distribution function of each family from one end to the other', () => {
    for (const [family, cumulative, tolerance] of CUMULATIVES) {
      const sampler = createSampler(family);
      for (const u of [1e-6, 0.001, 0.05, 0.2, 0.4, 0.5, 0.6, 0.8, 0.95, 0.999, 1 - 1e-6]) {
        expect(Math.abs(cumulative(sampler.sample(u)) - u), `${family.kind} at ${u}`).toBeLessThan(
          tolerance * Math.max(u, 1 - u) + 1e-14,
        );
      }
    }
  });

  it('gives the published 95 % points of a lognormal, a gamma and a triangular distribution', () => {
    // Case S18 of the collected checks (elementary; recomputed): (a) mean 3, squared variation 0.5; (b) gamma
    // of mean 3, squared variation 0.25; (d) 7 − √(0.05 · 5 · 4) = 6.
    const lognormal = createSampler({
      kind: 'lognormal',
      logMean: 0.895879734614028,
      logStandardDeviation: Math.sqrt(0.405465108108164),
    });
    expect(lognormal.sample(0.95)).toBeCloseTo(6.98146701337013, 11);
    const gamma = createSampler({ kind: 'gamma', shape: 4, scale: 0.75 });
    expect(Math.abs(gamma.sample(0.95) / 5.81524239594954 - 1)).toBeLessThan(1e-4);
    const triangular = createSampler({ kind: 'triangular', low: 2, mode: 3, high: 7 });
    expect(triangular.sample(0.95)).toBeCloseTo(6, 12);
  });

  it('never draws less for a larger u', () => {
    fc.assert(
      fc.property(distribution, fc.array(uniform, { minLength: 2 }), (family, draws) => {
        const sampler = createSampler(family);
        const sorted = [...draws].sort((a, b) => a - b).map((u) => sampler.sample(u));
        for (let index = 1; index < sorted.length; index++) {
          const [before = 0, after = 0] = sorted.slice(index - 1, index + 1);
          expect(after).toBeGreaterThanOrEqual(before);
        }
      }),
      { seed: 1, numRuns: 500 },
    );
  });

  it('never draws less for the next one of the 2^32 uniform numbers that a stream can give', () => {
    fc.assert(
      fc.property(distribution, fc.integer({ min: 0, max: 2 ** 32 - 2 }), (family, k) => {
        const sampler = createSampler(family);
        expect(sampler.sample((k + 1.5) / 2 ** 32)).toBeGreaterThanOrEqual(
          sampler.sample((k + 0.5) / 2 ** 32),
        );
      }),
      { seed: 2, numRuns: 2000 },
    );
  });

  it('gives finite hours, not negative, whatever the draw', () => {
    fc.assert(
      fc.property(distribution, uniform, (family, u) => {
        const drawn = createSampler(family).sample(u);
        expect(drawn).toBeGreaterThanOrEqual(0);
        expect(drawn).toBeLessThan(Number.POSITIVE_INFINITY);
      }),
      { seed: 3, numRuns: 500 },
    );
  });

  it('stays between low and high where a distribution has them', () => {
    fc.assert(
      fc.property(ascending, uniform, ([low = 0, mode = 0, high = 0], u) => {
        for (const kind of ['uniform', 'triangular', 'pert'] as const) {
          const drawn = createSampler({ kind, low, mode, high }).sample(u);
          expect(drawn).toBeGreaterThanOrEqual(low * (1 - 1e-14));
          expect(drawn).toBeLessThanOrEqual(high * (1 + 1e-14));
        }
      }),
      { seed: 4, numRuns: 300 },
    );
  });

  it('always draws the same when low and high agree', () => {
    for (const u of [0.001, 0.5, 0.999]) {
      expect(createSampler({ kind: 'uniform', low: 3, high: 3 }).sample(u)).toBe(3);
      expect(createSampler({ kind: 'triangular', low: 3, mode: 3, high: 3 }).sample(u)).toBe(3);
      expect(createSampler({ kind: 'pert', low: 3, mode: 3, high: 3 }).sample(u)).toBe(3);
      expect(createSampler({ kind: 'normal', mean: 3, standardDeviation: 0 }).sample(u)).toBe(3);
      expect(createSampler({ kind: 'constant', value: 3 }).sample(u)).toBe(3);
    }
  });

  it('refuses parameters that give negative durations or none at all', () => {
    const impossible: readonly Distribution[] = [
      { kind: 'constant', value: -1 },
      { kind: 'constant', value: Number.NaN },
      { kind: 'constant', value: Number.POSITIVE_INFINITY },
      { kind: 'uniform', low: -2, high: 5 },
      { kind: 'exponential', mean: -1 },
      { kind: 'normal', mean: -500, standardDeviation: 1 },
      { kind: 'weibull', shape: 0, scale: 1 },
      { kind: 'gamma', shape: -1, scale: 1 },
      { kind: 'hyperexponential', branches: [] },
      { kind: 'hyperexponential', branches: [{ probability: 1, mean: -1 }] },
      { kind: 'measured', values: [] },
      { kind: 'measured', values: [3, -1, 2] },
    ];
    for (const family of impossible) expect(() => createSampler(family), family.kind).toThrow(RangeError);
  });
});
