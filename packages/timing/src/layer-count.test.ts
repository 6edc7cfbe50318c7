import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { layerCount } from './layer-count.ts';

describe('layerCount', () => {
  // Published check G13; by definition, closed form.
  it.each([
    [30, 0.05, 600],
    [30, 0.1, 300],
    [30, 0.2, 150],
    [30, 0.3, 100],
    [30.04, 0.1, 301],
    [0.54, 0.06, 9],
    [2.1, 0.3, 7],
    [1.35, 0.15, 9],
  ])('takes for %d mm in layers of %d mm %d layers', (height, layer, layers) => {
    expect(layerCount(height, layer)).toBe(layers);
  });

  it('takes n layers for n times a layer, and one more for any micrometre above', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 20_000 }),
        fc.integer({ min: 20, max: 500 }),
        (layers, micrometres) => {
          const layer = micrometres / 1000;
          expect(layerCount(layers * layer, layer)).toBe(layers);
          expect(layerCount((layers * micrometres) / 1000, layer)).toBe(layers);
          expect(layerCount((layers * micrometres + 1) / 1000, layer)).toBe(layers + 1);
        },
      ),
    );
  });

  it('takes no further layer for the rounding of a mesh in single precision', () => {
    for (let layers = 1; layers <= 3000; layers++) {
      expect(layerCount(Math.fround(layers * 0.1), 0.1)).toBe(layers);
    }
  });

  it('takes a layer for the thinnest part and none for nothing', () => {
    expect(layerCount(0.0001, 0.1)).toBe(1);
    expect(layerCount(0, 0.1)).toBe(0);
  });

  it('refuses negative heights and layers of no thickness', () => {
    expect(() => layerCount(-1, 0.1)).toThrow(new RangeError('The height must be 0 or more, not -1.'));
    expect(() => layerCount(1, 0)).toThrow(new RangeError('The layer thickness must be above 0, not 0.'));
    expect(() => layerCount(1, Number.NaN)).toThrow(RangeError);
  });
});
