import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mostIdentical } from './identical.ts';

function grid(width: number, depth: number, long: number, short: number): number {
  return Math.max(
    Math.floor(width / long) * Math.floor(depth / short),
    Math.floor(width / short) * Math.floor(depth / long),
  );
}

/**
 * The true optimum for small whole numbers: every cell is either left empty or the lower left corner of a piece,
 * row by row, with the area as the bound.
 */
function optimum(width: number, depth: number, long: number, short: number): number {
  const taken = new Uint8Array(width * depth);
  const bound = Math.floor((width * depth) / (long * short));
  let best = 0;
  const isFree = (x: number, y: number, across: number, up: number): boolean => {
    if (x + across > width || y + up > depth) return false;
    for (let row = y; row < y + up; row++) {
      for (let column = x; column < x + across; column++) if (taken[row * width + column] === 1) return false;
    }
    return true;
  };
  const fill = (x: number, y: number, across: number, up: number, value: number): void => {
    for (let row = y; row < y + up; row++) taken.fill(value, row * width + x, row * width + x + across);
  };
  const search = (cell: number, pieces: number, empty: number): void => {
    best = Math.max(best, pieces);
    if (cell === width * depth || best === bound) return;
    if (pieces + Math.floor((width * depth - empty - pieces * long * short) / (long * short)) <= best) return;
    if (taken[cell] === 1) {
      search(cell + 1, pieces, empty);
      return;
    }
    const x = cell % width;
    const y = Math.floor(cell / width);
    for (const [across, up] of long === short
      ? [[long, short]]
      : [
          [long, short],
          [short, long],
        ]) {
      if (!isFree(x, y, across, up)) continue;
      fill(x, y, across, up, 1);
      search(cell + 1, pieces + 1, empty);
      fill(x, y, across, up, 0);
    }
    search(cell + 1, pieces, empty + 1);
  };
  search(0, 0, 0);
  return best;
}

describe('mostIdentical', () => {
  // Published check P09: K. A. Dowsland, 1987, and the literature on loading pallets; optima proved by integer programs.
  it.each([
    [22, 16, 5, 3, 21, 23],
    [10, 9, 4, 3, 6, 7],
    [13, 10, 5, 2, 13, 13],
  ])(
    'packs %d x %d with %d x %d better than the grid of %d: %d, the optimum',
    (width, depth, long, short, rows, best) => {
      expect(grid(width, depth, long, short)).toBeLessThanOrEqual(rows);
      expect(mostIdentical(width, depth, long, short)).toBe(best);
      // The same on micrometres.
      expect(mostIdentical(width * 1000, depth * 1000, long * 1000, short * 1000)).toBe(best);
    },
  );

  it('is never above the optimum, never below the best grid, and seldom below the optimum', () => {
    let cases = 0;
    let optimal = 0;
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 9 }),
        fc.integer({ min: 2, max: 9 }),
        fc.integer({ min: 1, max: 5 }),
        fc.integer({ min: 1, max: 5 }),
        (width, depth, one, other) => {
          const [long, short] = [Math.max(one, other), Math.min(one, other)];
          const most = mostIdentical(width, depth, long, short);
          const best = optimum(width, depth, long, short);
          expect(most).toBeLessThanOrEqual(best);
          expect(most).toBeGreaterThanOrEqual(grid(width, depth, long, short));
          cases++;
          if (most === best) optimal++;
        },
      ),
      { seed: 4, numRuns: 300 },
    );
    expect(optimal / cases).toBeGreaterThanOrEqual(0.99);
  });

  it('never takes more than the area, and does not care which edge is called the width', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 100, max: 4000 }),
        fc.integer({ min: 100, max: 4000 }),
        fc.integer({ min: 40, max: 2000 }),
        fc.integer({ min: 40, max: 2000 }),
        (width, depth, one, other) => {
          const [long, short] = [Math.max(one, other), Math.min(one, other)];
          const most = mostIdentical(width, depth, long, short);
          expect(most * long * short).toBeLessThanOrEqual(width * depth);
          expect(most).toBeGreaterThanOrEqual(grid(width, depth, long, short));
          expect(mostIdentical(depth, width, long, short)).toBe(most);
        },
      ),
    );
  });

  it('counts very many small pieces in rows', () => {
    expect(mostIdentical(400_000, 400_000, 1000, 1000)).toBe(160_000);
    expect(mostIdentical(5, 5, 9, 2)).toBe(0);
  });
});
