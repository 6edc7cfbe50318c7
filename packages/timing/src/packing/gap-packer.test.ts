import fc from 'fast-check';
import { MaxRectsPacker } from 'maxrects-packer/dist/maxrects-packer.mjs';
import { describe, expect, it } from 'vitest';
import { draws, wholeNumber } from '../test-data/draws.ts';
import { GapPacker, type GapRule } from './gap-packer.ts';
import { ATTEMPTS } from './platform-packer.ts';

interface Pieces {
  readonly long: Float64Array;
  readonly short: Float64Array;
  readonly counts: Int32Array;
}

function piecesOf(sizes: readonly (readonly [number, number])[], counts: readonly number[]): Pieces {
  return {
    long: Float64Array.from(sizes, (size) => Math.max(...size)),
    short: Float64Array.from(sizes, (size) => Math.min(...size)),
    counts: Int32Array.from(counts),
  };
}

function squares(sides: readonly number[]): Pieces {
  return piecesOf(
    sides.map((side) => [side, side] as const),
    sides.map(() => 1),
  );
}

/** Fails unless the last packing has all pieces, inside, and none over another. */
function expectSound(
  packer: GapPacker,
  { long, short, counts }: Pieces,
  width: number,
  height: number,
): void {
  const missing = Array.from(counts);
  const places: number[][] = [];
  for (let piece = 0; piece < packer.placed; piece++) {
    const place = Array.from(packer.placements.subarray(4 * piece, 4 * piece + 4));
    const [left, bottom, across, up] = place;
    expect(left).toBeGreaterThanOrEqual(0);
    expect(bottom).toBeGreaterThanOrEqual(0);
    expect(left + across).toBeLessThanOrEqual(width);
    expect(bottom + up).toBeLessThanOrEqual(height);
    for (const [otherLeft, otherBottom, otherAcross, otherUp] of places) {
      const isApart =
        left + across <= otherLeft ||
        otherLeft + otherAcross <= left ||
        bottom + up <= otherBottom ||
        otherBottom + otherUp <= bottom;
      expect(isApart).toBe(true);
    }
    const shape = missing.findIndex(
      (count, index) =>
        count > 0 && Math.max(across, up) === long[index] && Math.min(across, up) === short[index],
    );
    expect(shape).toBeGreaterThanOrEqual(0);
    missing[shape]--;
    places.push(place);
  }
  expect(missing.every((count) => count === 0)).toBe(true);
}

/** Whether any attempt packs the pieces, from either edge; every packing that is found is checked. */
function anyPacks(pieces: Pieces, width: number, height: number): boolean {
  const packer = new GapPacker(pieces.long, pieces.short);
  let isPacked = false;
  for (const rule of ATTEMPTS) {
    for (const [across, up] of [
      [width, height],
      [height, width],
    ]) {
      if (!packer.packs(pieces.counts, across, up, rule)) continue;
      expectSound(packer, pieces, across, up);
      isPacked = true;
    }
  }
  return isPacked;
}

const rules: fc.Arbitrary<GapRule> = fc.record({
  by: fc.constantFrom('width', 'area', 'height', 'sides'),
  toHigherWall: fc.boolean(),
});

describe('GapPacker', () => {
  it('never puts a piece over another or over the edge', () => {
    const size = fc.tuple(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 60 }));
    let packed = 0;
    fc.assert(
      fc.property(
        fc.array(fc.tuple(size, fc.integer({ min: 0, max: 8 })), { minLength: 1, maxLength: 8 }),
        fc.integer({ min: 40, max: 160 }),
        fc.integer({ min: 40, max: 160 }),
        rules,
        (kinds, width, height, rule) => {
          const pieces = piecesOf(
            kinds.map(([sides]) => sides),
            kinds.map(([, count]) => count),
          );
          const packer = new GapPacker(pieces.long, pieces.short);
          if (!packer.packs(pieces.counts, width, height, rule)) return;
          packed++;
          expectSound(packer, pieces, width, height);
        },
      ),
      { seed: 1, numRuns: 1000 },
    );
    expect(packed).toBeGreaterThan(200);
  });

  it('gives the same answer whatever the order of the shapes', () => {
    const size = fc.tuple(fc.integer({ min: 5, max: 40 }), fc.integer({ min: 5, max: 40 }));
    fc.assert(
      fc.property(
        fc.array(fc.tuple(size, fc.integer({ min: 1, max: 5 })), { minLength: 2, maxLength: 6 }),
        rules,
        (kinds, rule) => {
          const answer = (order: typeof kinds): boolean => {
            const { long, short, counts } = piecesOf(
              order.map(([sides]) => sides),
              order.map(([, count]) => count),
            );
            return new GapPacker(long, short).packs(counts, 100, 90, rule);
          };
          expect(answer(kinds.toReversed())).toBe(answer(kinds));
        },
      ),
      { seed: 2, numRuns: 500 },
    );
  });

  // Published check P07: A. J. W. Duijvestijn, Journal of Combinatorial Theory B 25 (1978).
  const order21 = [50, 42, 37, 35, 33, 29, 27, 25, 24, 19, 18, 17, 16, 15, 11, 9, 8, 7, 6, 4, 2];

  it('never packs the squared square of order 21 into less than its 112 x 112, and does pack it into 116 x 116', () => {
    expect(order21.reduce((sum, side) => sum + side * side, 0)).toBe(112 * 112);
    expect(anyPacks(squares(order21), 112, 111)).toBe(false);
    expect(anyPacks(squares(order21), 116, 116)).toBe(true);
  });

  // Published check P08: Z. Moron, 1925.
  it('never packs the squared rectangle of order 9 into less than its 33 x 32, and does pack it into 35 x 35', () => {
    const order9 = [18, 15, 14, 10, 9, 8, 7, 4, 1];
    expect(order9.reduce((sum, side) => sum + side * side, 0)).toBe(33 * 32);
    expect(anyPacks(squares(order9), 33, 31)).toBe(false);
    expect(anyPacks(squares(order9), 35, 35)).toBe(true);
  });

  // Published check P10: OEIS A005842, from memory. Bounds for a heuristic.
  it.each(
    [1, 3, 5, 7, 9, 11, 13, 15, 18, 21, 24, 27, 30, 33, 36, 39].map((side, index) => [index + 1, side]),
  )('needs for squares of 1 to %d at least a square of %d, and at most one more', (count, side) => {
    const pieces = squares(Array.from({ length: count }, (_, index) => index + 1));
    if (side > 1) expect(anyPacks(pieces, side - 1, side - 1)).toBe(false);
    expect(anyPacks(pieces, Math.ceil(side * 1.1), Math.ceil(side * 1.1))).toBe(true);
  });

  it('packs nearly all that a general library packs, and much that it does not', () => {
    const draw = draws('against a library');
    const tally = { both: 0, onlyOurs: 0, onlyTheirs: 0, neither: 0 };
    for (let run = 0; run < 600; run++) {
      const width = wholeNumber(draw, 200, 400);
      const height = wholeNumber(draw, 150, 350);
      const share = 0.1 + 0.3 * draw();
      const kinds = Array.from(
        { length: wholeNumber(draw, 2, 9) },
        () => [10 + Math.ceil(draw() * share * 200), 10 + Math.ceil(draw() * share * 200)] as const,
      );
      const counts = kinds.map(() => 0);
      const area = (0.75 + 0.23 * draw()) * width * height;
      let taken = 0;
      for (let misses = 0; misses < 50; ) {
        const kind = wholeNumber(draw, 0, kinds.length - 1);
        const more = kinds[kind][0] * kinds[kind][1];
        if (taken + more > area) {
          misses++;
        } else {
          counts[kind]++;
          taken += more;
        }
      }
      const pieces = piecesOf(kinds, counts);
      const packer = new GapPacker(pieces.long, pieces.short);
      const ours = ATTEMPTS.some((attempt) =>
        attempt.fromShorter === width < height
          ? packer.packs(pieces.counts, width, height, attempt)
          : packer.packs(pieces.counts, height, width, attempt),
      );
      const library = new MaxRectsPacker(width, height, 0, {
        smart: false,
        pot: false,
        square: false,
        allowRotation: true,
      });
      library.addArray(
        kinds.flatMap(([across, up], kind) =>
          Array.from({ length: counts[kind] }, () => ({ x: 0, y: 0, width: across, height: up })),
        ),
      );
      const theirs = library.bins.length === 1;
      if (ours && theirs) tally.both++;
      else if (ours) tally.onlyOurs++;
      else if (theirs) tally.onlyTheirs++;
      else tally.neither++;
    }
    // 440, 112, 1 and 47 when it was written.
    expect(tally.both / (tally.both + tally.onlyTheirs)).toBeGreaterThan(0.99);
    expect(tally.onlyOurs / (tally.onlyOurs + tally.neither)).toBeGreaterThan(0.6);
  });
});
