import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { block } from '../test-data/blocks.ts';
import { PowderBedPacker } from './powder-bed-packer.ts';

const bed = {
  kind: 'powder bed',
  width: 210,
  depth: 210,
  height: 300,
  margin: 5,
  spacing: 5,
  packingDensity: 0.1,
  boxShare: 0.5,
} as const;

describe('PowderBedPacker', () => {
  it('is as high as the boxes with their spacing need at their share of the cake', () => {
    // 40 boxes of 20 x 20 x 15 mm with 5 mm each: 40 x 25 x 25 x 20 = 500000 mm3, half of the cake on 200 x 200 mm.
    const hollow = { ...block(20, 20, 15), volume: 300 };
    expect(new PowderBedPacker(bed, [hollow]).height(Int32Array.of(40))).toBeCloseTo(25, 9);
  });

  it('is as high as the parts need at the packing density', () => {
    // 40 solid blocks of 6000 mm3 are a tenth of the cake on 200 x 200 mm.
    expect(new PowderBedPacker(bed, [block(20, 20, 15)]).height(Int32Array.of(40))).toBeCloseTo(60, 9);
  });

  it('is at least as high as the highest part', () => {
    const packer = new PowderBedPacker(bed, [block(5, 5, 5), block(10, 10, 120)]);
    expect(packer.height(Int32Array.of(2, 1))).toBe(120);
  });

  it('is as high as a single piece, however much of the bed that takes', () => {
    const packer = new PowderBedPacker(bed, [block(200, 200, 300)]);
    expect(packer.height(Int32Array.of(1))).toBe(300);
    expect(packer.most(0)).toBe(1);
    expect(packer.fits(Int32Array.of(2))).toBe(false);
  });

  it('takes what is not too large for the floor in one of two turns, nor too high', () => {
    const space = { ...bed, depth: 110 };
    const packer = new PowderBedPacker(space, [block(90, 190, 10), block(101, 101, 10), block(10, 10, 301)]);
    expect([packer.most(0) > 0, packer.most(1), packer.most(2)]).toEqual([true, 0, 0]);
    expect(packer.fits(Int32Array.of(1, 0, 0))).toBe(true);
    expect(packer.fits(Int32Array.of(1, 1, 0))).toBe(false);
    expect(packer.fits(Int32Array.of(0, 0, 1))).toBe(false);
  });

  it('counts no more pieces than anybody would unpack, and at once', () => {
    // Solid grains of 1e-4 mm3 are a tenth of a cake of 200 x 200 x 300 mm when there are 1.2e10 of them.
    const grains = new PowderBedPacker({ ...bed, spacing: 0 }, [block(0.05, 0.05, 0.04)]);
    expect(grains.most(0)).toBe(1_000_000);
  }, 1000);

  it('fits every number of pieces of one shape up to the most, and none above', () => {
    const size = fc.integer({ min: 10, max: 200 });
    fc.assert(
      fc.property(size, size, size, (width, depth, height) => {
        const packer = new PowderBedPacker(bed, [block(width, depth, height)]);
        const most = packer.most(0);
        expect(most).toBeGreaterThan(0);
        for (let pieces = 0; pieces <= most; pieces++) expect(packer.fits(Int32Array.of(pieces))).toBe(true);
        expect(packer.fits(Int32Array.of(most + 1))).toBe(false);
      }),
      { numRuns: 50 },
    );
  });

  it('keeps to the packing density and the box share in every build of several pieces', () => {
    const size = fc.integer({ min: 5, max: 150 });
    const kind = fc.tuple(size, size, size, fc.integer({ min: 0, max: 10 }));
    fc.assert(
      fc.property(fc.array(kind, { minLength: 1, maxLength: 5 }), (kinds) => {
        const shapes = kinds.map(([width, depth, height]) => block(width, depth, height));
        const counts = Int32Array.from(kinds, ([, , , pieces]) => pieces);
        const pieces = counts.reduce((sum, count) => sum + count, 0);
        fc.pre(pieces > 1);
        const cake = new PowderBedPacker(bed, shapes).height(counts) * 200 * 200;
        const sum = (of: (index: number) => number): number =>
          shapes.reduce((total, _, index) => total + counts[index] * of(index), 0);
        const volume = sum((index) => shapes[index].volume);
        const boxes = sum(
          (index) => (shapes[index].width + 5) * (shapes[index].depth + 5) * (shapes[index].height + 5),
        );
        expect(volume / cake).toBeLessThanOrEqual(0.1 + 1e-9);
        expect(boxes / cake).toBeLessThanOrEqual(0.5 + 1e-9);
      }),
    );
  });

  it('is as full as it is high', () => {
    const packer = new PowderBedPacker(bed, [block(20, 20, 15)]);
    expect(packer.fill(Int32Array.of(40))).toBeCloseTo(0.2, 9);
    expect(packer.fill(Int32Array.of(0))).toBe(0);
  });

  it('refuses shares of nothing and of more than all', () => {
    expect(() => new PowderBedPacker({ ...bed, packingDensity: 0 }, [])).toThrow(
      new RangeError('The packing density must be above 0, not 0.'),
    );
    expect(() => new PowderBedPacker({ ...bed, boxShare: 1.1 }, [])).toThrow(
      new RangeError('The share of boxes in the cake must lie between 0 and 1, not 1.1.'),
    );
  });
});
