/** With more pieces than this in a row, all lie the same way. */
const MOST_IN_A_ROW = 200;

/** With more sums of sides than this along an edge, only two blocks are tried. */
const MOST_SUMS = 28;

/**
 * Most rectangles of one size that are found to go into a larger one, with quarter turns.
 *
 * Three patterns are tried, the next only while fewer pieces are in than the bound allows: all the same way; two
 * blocks, each all the same way; and five blocks, four of them around a middle one, each cut into two again and again
 * until all lie the same way. The edges of blocks are tried where sums of sides end, since every packing can be
 * pushed to the left and down. When there are many small rectangles, five blocks are left out: little is lost then.
 * The bound is the area between the largest sums of sides, since a packing that is pushed reaches no further.
 * Sources, from memory: E. E. Bischoff and W. B. Dowsland, Journal of the Operational Research Society 33 (1982),
 * pages 271-280, for five blocks; R. Morabito and S. Morales, the same journal 49 (1998), pages 819-828, for blocks
 * in blocks.
 * All lengths are whole numbers of the same unit.
 */
export function mostIdentical(width: number, depth: number, long: number, short: number): number {
  const simple = oneWay(width, depth, long, short);
  if (Math.max(width, depth) > MOST_IN_A_ROW * short) return simple;
  const across = sumsUpTo(width, long, short);
  const along = sumsUpTo(depth, long, short);
  const bound = Math.floor((across[across.length - 1] * along[along.length - 1]) / (long * short));
  if (simple >= bound) return simple;
  const two = Math.max(
    ...across.map((cut) => oneWay(cut, depth, long, short) + oneWay(width - cut, depth, long, short)),
    ...along.map((cut) => oneWay(width, cut, long, short) + oneWay(width, depth - cut, long, short)),
  );
  if (two >= bound || across.length > MOST_SUMS || along.length > MOST_SUMS) return two;
  return new Blocks(across, along, long, short).most(two, bound);
}

/** Pieces in rows and columns that all lie the same way. */
function oneWay(width: number, depth: number, long: number, short: number): number {
  return Math.max(
    Math.floor(width / long) * Math.floor(depth / short),
    Math.floor(width / short) * Math.floor(depth / long),
  );
}

/** All sums of whole numbers of long and short sides up to a length, from 0 up. */
function sumsUpTo(length: number, long: number, short: number): number[] {
  const sums = new Set<number>();
  for (let start = 0; start <= length; start += long) {
    for (let sum = start; sum <= length; sum += short) sums.add(sum);
  }
  return [...sums].sort((first, second) => first - second);
}

/** Blocks whose edges are sums of sides; an edge is told by its position among the sums. */
class Blocks {
  private readonly across: readonly number[];
  private readonly along: readonly number[];
  /** Position of the largest sum in the difference of two sums, as a table. */
  private readonly restAcross: Uint8Array;
  private readonly restAlong: Uint8Array;
  /** Pieces in a block that is cut into two again and again, as a table. */
  private readonly pieces: Uint16Array;

  constructor(across: readonly number[], along: readonly number[], long: number, short: number) {
    this.across = across;
    this.along = along;
    this.restAcross = restsOf(across);
    this.restAlong = restsOf(along);
    this.pieces = new Uint16Array(across.length * along.length);
    for (let column = 0; column < across.length; column++) {
      for (let row = 0; row < along.length; row++) {
        this.pieces[column * along.length + row] = this.cut(column, row, long, short);
      }
    }
  }

  most(start: number, bound: number): number {
    const { restAcross, restAlong } = this;
    const columns = this.across.length;
    const rows = this.along.length;
    const lastColumn = columns - 1;
    const lastRow = rows - 1;
    let best = Math.max(start, this.block(lastColumn, lastRow));
    for (let left = 0; left < columns; left++) {
      for (let right = left; right < columns; right++) {
        const rightWidth = restAcross[lastColumn * columns + right];
        const topWidth = restAcross[lastColumn * columns + left];
        const middleWidth = restAcross[right * columns + left];
        for (let low = 0; low < rows; low++) {
          const corners = this.block(right, low) + this.block(left, restAlong[lastRow * rows + low]);
          for (let high = low; high < rows; high++) {
            const pieces =
              corners +
              this.block(rightWidth, high) +
              this.block(topWidth, restAlong[lastRow * rows + high]) +
              this.block(middleWidth, restAlong[high * rows + low]);
            if (pieces > best) {
              best = pieces;
              if (best >= bound) return best;
            }
          }
        }
      }
    }
    return best;
  }

  private block(column: number, row: number): number {
    return this.pieces[column * this.along.length + row];
  }

  private cut(column: number, row: number, long: number, short: number): number {
    const { across, along, restAcross, restAlong } = this;
    let best = oneWay(across[column], along[row], long, short);
    for (let cut = 1; 2 * across[cut] <= across[column]; cut++) {
      best = Math.max(best, this.block(cut, row) + this.block(restAcross[column * across.length + cut], row));
    }
    for (let cut = 1; 2 * along[cut] <= along[row]; cut++) {
      best = Math.max(
        best,
        this.block(column, cut) + this.block(column, restAlong[row * along.length + cut]),
      );
    }
    return best;
  }
}

/** For each pair of sums, the position of the largest sum that is not above their difference. */
function restsOf(sums: readonly number[]): Uint8Array {
  const size = sums.length;
  const rests = new Uint8Array(size * size);
  for (let whole = 0; whole < size; whole++) {
    let rest = whole;
    for (let part = 0; part <= whole; part++) {
      while (sums[rest] > sums[whole] - sums[part]) rest--;
      rests[whole * size + part] = rest;
    }
  }
  return rests;
}
