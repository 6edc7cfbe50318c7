import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shapeOfDimensions } from './shape-of-dimensions.ts';

describe('shapeOfDimensions', () => {
  it('takes a full box as a box without supports', () => {
    expect(shapeOfDimensions({ width: 10, depth: 20, height: 30, volume: 6000 })).toEqual({
      width: 10,
      depth: 20,
      height: 30,
      volume: 6000,
      surface: 2200,
      footprint: 200,
      overhangArea: 0,
      supportedVolume: 0,
      supportContactArea: 0,
      layerAreas: [],
    });
  });

  it('takes a full box as one, also where the product of its sides is rounded down', () => {
    const sides = { width: 0.1, depth: 0.3, height: 0.7 };
    expect(sides.width * sides.depth * sides.height).toBeLessThan(0.021);
    expect(shapeOfDimensions({ ...sides, volume: 0.021 })).toMatchObject({
      overhangArea: 0,
      supportedVolume: 0,
    });
  });

  it('takes typical shares for what is not given', () => {
    const shape = shapeOfDimensions({ width: 40, depth: 30, height: 20, volume: 6000 });
    expect(shape.footprint).toBeCloseTo(0.8 * 1200, 9);
    expect(shape.overhangArea).toBeCloseTo(0.15 * 960, 9);
    expect(shape.supportedVolume).toBeCloseTo(144 * 0.4 * 20, 9);
    expect(shape.supportContactArea).toBe(shape.overhangArea);
  });

  it('keeps what is given', () => {
    const given = { width: 40, depth: 30, height: 20, volume: 6000 };
    const shape = shapeOfDimensions({
      ...given,
      surface: 9000,
      supportedVolume: 500,
      supportContactArea: 60,
    });
    expect(shape).toMatchObject({ surface: 9000, supportedVolume: 500, supportContactArea: 60 });
    expect(shapeOfDimensions({ ...given, supportedVolume: 0 })).toMatchObject({
      overhangArea: 0,
      supportContactArea: 0,
    });
  });

  it('gives shapes that can be: the footprint holds the volume, and supports stay in the box', () => {
    const size = fc.double({ min: 0.1, max: 500, noNaN: true });
    fc.assert(
      fc.property(
        size,
        size,
        size,
        fc.double({ min: 0.001, max: 1, noNaN: true }),
        (width, depth, height, share) => {
          const box = width * depth * height;
          const shape = shapeOfDimensions({ width, depth, height, volume: share * box });
          expect(shape.footprint * height).toBeGreaterThanOrEqual(shape.volume * (1 - 1e-9));
          expect(shape.footprint).toBeLessThanOrEqual(width * depth);
          expect(shape.overhangArea).toBeLessThanOrEqual(shape.footprint);
          expect(shape.supportedVolume + shape.volume).toBeLessThanOrEqual(box * (1 + 1e-9));
        },
      ),
    );
  });

  it.each([
    [{ width: 0, depth: 1, height: 1, volume: 1 }, 'The width must be above 0, not 0.'],
    [{ width: 1, depth: -2, height: 1, volume: 1 }, 'The depth must be above 0, not -2.'],
    [{ width: 1, depth: 1, height: Number.NaN, volume: 1 }, 'The height must be above 0, not NaN.'],
    [{ width: 1, depth: 1, height: 1, volume: 0 }, 'The volume must be above 0, not 0.'],
    [
      { width: 10, depth: 10, height: 10, volume: 1001 },
      'A volume of 1001 mm3 is more than a box of 10 x 10 x 10 mm holds (1000 mm3).',
    ],
    [
      { width: 10, depth: 10, height: 10, volume: 900, surface: 400 },
      'A surface of 400 mm2 is less than a sphere of 900 mm3 has (451 mm2).',
    ],
    [
      { width: 10, depth: 10, height: 10, volume: 900, supportedVolume: -1 },
      'The supported volume must be 0 or more, not -1.',
    ],
  ])('refuses %j', (dimensions, message) => {
    expect(() => shapeOfDimensions(dimensions)).toThrow(new RangeError(message));
  });
});
