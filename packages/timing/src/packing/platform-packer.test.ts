import type { PartShape } from '@buildweek/model';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { block, plate } from '../test-data/blocks.ts';
import { draws, wholeNumber } from '../test-data/draws.ts';
import { GapPacker } from './gap-packer.ts';
import { ATTEMPTS, PlatformPacker } from './platform-packer.ts';

const platform = { kind: 'platform', width: 250, depth: 210, height: 200, margin: 5, spacing: 4 } as const;

const sides = fc.tuple(fc.integer({ min: 10, max: 120 }), fc.integer({ min: 10, max: 120 }));
const shapesAndCounts = fc.array(fc.tuple(sides, fc.integer({ min: 0, max: 6 })), {
  minLength: 1,
  maxLength: 6,
});

function platesOf(kinds: readonly (readonly [readonly [number, number], number])[]): PartShape[] {
  return kinds.map(([[width, depth]]) => plate(width, depth));
}

function countsOf(kinds: readonly (readonly [unknown, number])[]): Int32Array {
  return Int32Array.from(kinds, ([, count]) => count);
}

describe('PlatformPacker', () => {
  // Published check P11, elementary: floor((240 + 4) / (42 + 4)) = 5 by floor((200 + 4) / (30 + 4)) = 6.
  it('puts 30 parts of 42 x 30 mm on a platform of 250 x 210 mm with its margins and gaps', () => {
    expect(new PlatformPacker(platform, [plate(42, 30)]).most(0)).toBe(30);
  });

  // Published check P09 in millimetres: K. A. Dowsland, 1987, and the literature on loading pallets.
  it('puts 23 pieces of 5 x 3 on 22 x 16, where rows and columns hold 21', () => {
    const space = { ...platform, width: 22, depth: 16, margin: 0, spacing: 0 };
    expect(new PlatformPacker(space, [plate(5, 3)]).most(0)).toBe(23);
  });

  it('takes parts of one rectangle as one shape, whatever they are called and however high they are', () => {
    const space = { ...platform, width: 22, depth: 16, margin: 0, spacing: 0 };
    const packer = new PlatformPacker(space, [block(5, 3, 10), block(3, 5, 20), plate(4, 4)]);
    for (let pieces = 0; pieces <= 23; pieces++)
      expect(packer.fits(Int32Array.of(pieces, 23 - pieces, 0))).toBe(true);
    expect(packer.fits(Int32Array.of(12, 12, 0))).toBe(false);
    expect(packer.fits(Int32Array.of(11, 11, 1))).toBe(false);
  });

  it('needs no spacing at the edges, only between parts, and no margin between parts', () => {
    const space = { ...platform, width: 100, depth: 50, margin: 2, spacing: 4 };
    expect(new PlatformPacker(space, [plate(96, 46)]).most(0)).toBe(1);
    expect(new PlatformPacker(space, [plate(46, 46)]).most(0)).toBe(2);
    expect(new PlatformPacker(space, [plate(46.001, 46)]).most(0)).toBe(1);
    expect(new PlatformPacker(space, [plate(96.001, 46)]).most(0)).toBe(0);
  });

  it('does not fall over the rounding of a mesh in single precision', () => {
    const space = { ...platform, width: 0.3, depth: 0.1, margin: 0, spacing: 0 };
    expect(new PlatformPacker(space, [plate(Math.fround(0.1), 0.1)]).most(0)).toBe(3);
  });

  it('turns parts by a quarter when they fit only so', () => {
    const packer = new PlatformPacker(platform, [plate(190, 235)]);
    expect(packer.most(0)).toBe(1);
    expect(packer.fits(Int32Array.of(1))).toBe(true);
  });

  it('never takes a part that is higher than the space, or longer than the platform', () => {
    const packer = new PlatformPacker(platform, [block(20, 20, 200.1), plate(241, 10), plate(20, 20)]);
    expect([packer.most(0), packer.most(1)]).toEqual([0, 0]);
    expect(packer.fits(Int32Array.of(1, 0, 0))).toBe(false);
    expect(packer.fits(Int32Array.of(0, 1, 1))).toBe(false);
    expect(packer.fits(Int32Array.of(0, 0, 1))).toBe(true);
  });

  it('fits every number of pieces of one shape up to the most, and none above', () => {
    fc.assert(
      fc.property(sides, ([width, depth]) => {
        const packer = new PlatformPacker(platform, [plate(width, depth), plate(7, 7)]);
        const most = packer.most(0);
        for (let pieces = 0; pieces <= most; pieces++)
          expect(packer.fits(Int32Array.of(pieces, 0))).toBe(true);
        expect(packer.fits(Int32Array.of(most + 1, 0))).toBe(false);
        expect(packer.fits(Int32Array.of(most + 1, 1))).toBe(false);
      }),
      { numRuns: 50 },
    );
  });

  it('never takes more area than there is', () => {
    fc.assert(
      fc.property(shapesAndCounts, (kinds) => {
        const packer = new PlatformPacker(platform, platesOf(kinds));
        const counts = countsOf(kinds);
        if (packer.fits(counts)) expect(packer.fill(counts)).toBeLessThanOrEqual(1);
      }),
    );
  });

  it('keeps the margin at every edge and the spacing between any two parts of a mixed build', () => {
    let checked = 0;
    fc.assert(
      fc.property(shapesAndCounts, (kinds) => {
        const packer = new PlatformPacker(platform, platesOf(kinds), 1);
        if (!packer.fits(countsOf(kinds))) return;
        const { placed, placements } = packer.packer;
        // Packings are made for mixed builds of more than half the area only.
        if (placed > 0) checked++;
        let farRight = 0;
        let farUp = 0;
        for (let piece = 0; piece < placed; piece++) {
          const [left, bottom, across, up] = placements.subarray(4 * piece).map((length) => length / 1000);
          expect(Math.min(left, bottom)).toBeGreaterThanOrEqual(0);
          farRight = Math.max(farRight, left + across - 4);
          farUp = Math.max(farUp, bottom + up - 4);
          for (let other = 0; other < piece; other++) {
            const [otherLeft, otherBottom, otherAcross, otherUp] = placements
              .subarray(4 * other)
              .map((length) => length / 1000);
            const gapAcross = Math.max(left - (otherLeft + otherAcross - 4), otherLeft - (left + across - 4));
            const gapUp = Math.max(bottom - (otherBottom + otherUp - 4), otherBottom - (bottom + up - 4));
            expect(Math.max(gapAcross, gapUp)).toBeGreaterThanOrEqual(4 - 1e-9);
          }
        }
        // 240 x 200 mm between the margins; the packing may have grown from either edge.
        expect(Math.max(farRight, farUp)).toBeLessThanOrEqual(240 + 1e-9);
        expect(Math.min(farRight, farUp)).toBeLessThanOrEqual(200 + 1e-9);
      }),
      { seed: 5, numRuns: 300 },
    );
    expect(checked).toBeGreaterThan(20);
  });

  it('answers the same with a single place of memory, with many and with none of the questions before', () => {
    const questions = fc.array(fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 4, maxLength: 4 }), {
      minLength: 30,
      maxLength: 60,
    });
    fc.assert(
      fc.property(fc.array(sides, { minLength: 4, maxLength: 4 }), questions, (sizes, asked) => {
        const shapes = sizes.map(([width, depth]) => plate(width, depth));
        const forgetful = new PlatformPacker(platform, shapes, 1);
        const small = new PlatformPacker(platform, shapes, 8);
        const large = new PlatformPacker(platform, shapes, 4096);
        for (const question of [...asked, ...asked.toReversed(), ...asked]) {
          const counts = Int32Array.from(question);
          const answer = large.fits(counts);
          expect(forgetful.fits(counts)).toBe(answer);
          expect(small.fits(counts)).toBe(answer);
          expect(new PlatformPacker(platform, shapes, 1).fits(counts)).toBe(answer);
        }
      }),
      { numRuns: 20 },
    );
  });

  it('answers the same whatever the order of the shapes, and whichever edge is called the width', () => {
    fc.assert(
      fc.property(shapesAndCounts, (kinds) => {
        const answer = new PlatformPacker(platform, platesOf(kinds)).fits(countsOf(kinds));
        const reversed = kinds.toReversed();
        expect(new PlatformPacker(platform, platesOf(reversed)).fits(countsOf(reversed))).toBe(answer);
        const turned = { ...platform, width: platform.depth, depth: platform.width };
        expect(new PlatformPacker(turned, platesOf(kinds)).fits(countsOf(kinds))).toBe(answer);
      }),
    );
  });

  // A. Steinberg, SIAM Journal on Computing 26 (1997), theorem 1, from memory. Such builds are taken without being
  // packed; nearly all of them can in fact be shown by a packing that was found.
  it('takes rectangles of up to half the area, as a theorem says', () => {
    const draw = draws('half full');
    let shown = 0;
    const runs = 400;
    for (let run = 0; run < runs; run++) {
      const sizes = Array.from({ length: 4 }, () => [wholeNumber(draw, 10, 119), wholeNumber(draw, 10, 99)]);
      const long = Float64Array.from(sizes, (size) => Math.max(...size));
      const short = Float64Array.from(sizes, (size) => Math.min(...size));
      const counts = new Int32Array(4);
      for (let area = 0; ; ) {
        const kind = wholeNumber(draw, 0, 3);
        area += long[kind] * short[kind];
        if (area > (240 * 200) / 2) break;
        counts[kind]++;
      }
      const space = { ...platform, width: 240, depth: 200, margin: 0, spacing: 0 };
      const shapes = sizes.map(([width, depth]) => plate(width, depth));
      expect(new PlatformPacker(space, shapes).fits(counts)).toBe(true);
      const packer = new GapPacker(long, short);
      const isPacked = ATTEMPTS.some(
        (attempt) => packer.packs(counts, 240, 200, attempt) || packer.packs(counts, 200, 240, attempt),
      );
      if (isPacked) shown++;
    }
    expect(shown / runs).toBeGreaterThan(0.99);
  });

  it('takes no more than half the area on trust: two squares a little over half as wide do not fit', () => {
    const space = { ...platform, width: 100, depth: 100, margin: 0, spacing: 0 };
    const fitsBeside = (side: number): boolean =>
      new PlatformPacker(space, [plate(side, side), plate(side, side)]).fits(Int32Array.of(1, 1));
    expect(fitsBeside(50)).toBe(true);
    expect(fitsBeside(50.001)).toBe(false);
  });

  it('is as high as the highest part in the build', () => {
    const packer = new PlatformPacker(platform, [block(20, 20, 15), block(20, 20, 80)]);
    expect(packer.height(Int32Array.of(3, 0))).toBe(15);
    expect(packer.height(Int32Array.of(3, 1))).toBe(80);
    expect(packer.height(Int32Array.of(0, 0))).toBe(0);
  });

  it('is as full as the boxes with their spacing take of the usable area', () => {
    const packer = new PlatformPacker(platform, [plate(42, 30)]);
    expect(packer.fill(Int32Array.of(30))).toBeCloseTo((30 * 46 * 34) / (244 * 204), 12);
    expect(packer.fill(Int32Array.of(0))).toBe(0);
  });
});
