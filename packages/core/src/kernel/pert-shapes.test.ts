import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pertShapes } from './pert-shapes.ts';

describe('pertShapes', () => {
  it('gives the published shapes', () => {
    // Case S18 (e) of the collected checks (elementary; recomputed): PERT of 2, 3, 7.
    const { a, b } = pertShapes(2, 3, 7);
    expect(a).toBeCloseTo(1.8, 14);
    expect(b).toBeCloseTo(4.2, 14);
  });

  it('puts the mode of the beta distribution where it was asked for', () => {
    const hours = fc.double({ min: 0.01, max: 100, noNaN: true });
    fc.assert(
      fc.property(hours, hours, hours, (...three) => {
        const [low = 0, mode = 0, high = 0] = three.sort((x, y) => x - y);
        fc.pre(high - low > 1e-3);
        const { a, b } = pertShapes(low, mode, high);
        // Mode of a beta distribution: (a − 1) / (a + b − 2).
        expect(low + ((high - low) * (a - 1)) / (a + b - 2)).toBeCloseTo(mode, 9);
      }),
      { seed: 1 },
    );
  });

  it('is symmetric when there is nothing between low and high', () => {
    expect(pertShapes(3, 3, 3)).toEqual({ a: 3, b: 3 });
  });
});
