import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { HyperexponentialQuantile } from './hyperexponential-quantile.ts';

const branch = fc.record({
  probability: fc.double({ min: 1e-3, max: 1, noNaN: true }),
  mean: fc.double({ min: 1e-3, max: 1e3, noNaN: true }),
});
const uniform = fc.double({ min: 2 ** -33, max: 1 - 2 ** -33, noNaN: true });

describe('HyperexponentialQuantile', () => {
  it('is exponential when there is one branch', () => {
    const quantile = new HyperexponentialQuantile([{ probability: 1, mean: 3 }]);
    for (const u of [1e-9, 0.01, 0.5, 0.99, 1 - 1e-9]) {
      expect(Math.abs(quantile.value(u) / (-3 * Math.log1p(-u)) - 1)).toBeLessThan(1e-9);
    }
  });

  it('inverts the distribution function of any mixture', () => {
    fc.assert(
      fc.property(fc.array(branch, { minLength: 1, maxLength: 5 }), uniform, (branches, u) => {
        const total = branches.reduce((sum, { probability }) => sum + probability, 0);
        const x = new HyperexponentialQuantile(branches).value(u);
        const survival = branches.reduce(
          (sum, { probability, mean }) => sum + (probability / total) * Math.exp(-x / mean),
          0,
        );
        expect(Math.abs(survival - (1 - u))).toBeLessThan(1e-13 * (1 - u) * (1 - Math.log1p(-u)) + 4e-16);
      }),
      { seed: 1, numRuns: 2000 },
    );
  });

  it('takes probabilities in any common scale, and leaves out a branch that never comes', () => {
    const first = new HyperexponentialQuantile([
      { probability: 0.1, mean: 5.5 },
      { probability: 0.9, mean: 0.5 },
    ]);
    const second = new HyperexponentialQuantile([
      { probability: 1, mean: 5.5 },
      { probability: 0, mean: 1e6 },
      { probability: 9, mean: 0.5 },
    ]);
    for (const u of [0.1, 0.9, 0.999]) expect(second.value(u)).toBeCloseTo(first.value(u), 12);
  });
});
