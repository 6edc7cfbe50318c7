/**
 * Most rectangles of one size that go into a larger one, with quarter turns, as far as five blocks find them: the
 * rectangle is cut into four blocks around a middle one, and every block is filled by rows and columns that lie all
 * the same way. Blocks may be empty, so patterns of one, two, three and four blocks are among these.
 * Source: E. E. Bischoff and W. B. Dowsland, An application of the micro to product design and distribution,
 * Journal of the Operational Research Society 33 (1982), pages 271-280, from memory.
 * The edges of blocks are tried where sums of sides end, since everything can be pushed to the left and down. When
 * there are many small rectangles, patterns of two blocks are all that is tried: little is lost then.
 * All lengths are whole numbers of the same unit.
 */
export function mostIdentical(width: number, depth: number, long: number, short: number): number {
  const simple = oneWay(width, depth, long, short);
  if (Math.max(width, depth) > MOST_IN_A_ROW * short) return simple;
  const across = sumsUpTo(width, long, short);
  const along = sumsUpTo(depth, long, short);
  const usedWidth = across[across.length - 1];
  const usedDepth = along[along.length - 1];
  const bound = Math.floor((usedWidth * usedDepth) / (long * short));
  let best = simple;
  for (const cut of across) {
    if (best >= bound) return best;
    best = Math.max(best, oneWay(cut, depth, long, short) + oneWay(width - cut, depth, long, short));
  }
  for (const cut of along) {
    if (best >= bound) return best;
    best = Math.max(best, oneWay(width, cut, long, short) + oneWay(width, depth - cut, long, short));
  }
  if (best >= bound || across.length > MOST_SUMS || along.length > MOST_SUMS) return best;
  return fiveBlocks(width, depth, long, short, across, along, best, bound);
}

/** With more pieces than this in a row, blocks are not tried at all. */
const MOST_IN_A_ROW = 200;

/** With more sums of sides than this along an edge, five blocks are not tried. */
const MOST_SUMS = 24;

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

function fiveBlocks(
  width: number,
  depth: number,
  long: number,
  short: number,
  across: readonly number[],
  along: readonly number[],
  start: number,
  bound: number,
): number {
  let best = start;
  for (let i = 0; i < across.length; i++) {
    const left = across[i];
    for (let j = i; j < across.length; j++) {
      const right = across[j];
      for (let k = 0; k < along.length; k++) {
        const low = along[k];
        const corners = oneWay(right, low, long, short) + oneWay(left, depth - low, long, short);
        for (let l = k; l < along.length; l++) {
          const high = along[l];
          const pieces =
            corners +
            oneWay(width - right, high, long, short) +
            oneWay(width - left, depth - high, long, short) +
            oneWay(right - left, high - low, long, short);
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
