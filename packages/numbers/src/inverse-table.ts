/** Octaves of u below one half: from 2^-33, the middle of the smallest draw of 32 bits, up to 2^-1. */
const OCTAVES = 32;
const LOWEST = 2 ** -(OCTAVES + 1);
const DRAWS = 2 ** 32;
const DEFAULT_KNOTS = 4096;

/** Entry e: by what to multiply a number of [2^-(e+1), 2^-e) to reach [1, 2). */
const SCALES = Float64Array.from({ length: OCTAVES + 1 }, (_, octave) => 2 ** (octave + 1));

/**
 * A table of an inverse cumulative function x(u), for sampling by inversion where a full evaluation is too
 * slow for the hot path.
 *
 * The knots lie in octaves from both ends: each of [2^-33, 2^-32), …, [1/4, 1/2) in u, and the same in 1 − u,
 * is cut into equal cells. So the relative accuracy does not fall off towards the ends, where a table that is
 * uniform in u fails for a density that is unbounded at zero or has a long tail. Between knots runs the
 * monotone cubic of F. N. Fritsch and J. Butland, "A method for constructing local monotone piecewise cubic
 * interpolants", SIAM J. Sci. Stat. Comput. 5 (1984), with the weighted harmonic mean of the slopes: it stays
 * between its knots and never decreases.
 */
export class InverseTable {
  readonly #inverse: (u: number) => number;
  readonly #cells: number;
  /** Value and slope, one pair for each knot, from u = 2^-33 up to one half. */
  readonly #lower: Float64Array;
  /** The same over 1 − u. */
  readonly #upper: Float64Array;

  /**
   * @param inverse non-decreasing on the open interval (0, 1); called `knots` + 2 times here, and later only
   *   for u within 2^-33 of 0 or 1, where no draw of 32 bits falls
   * @param knots a positive multiple of 64
   * @throws RangeError when `knots` is something else, or the function is not finite at a knot
   */
  constructor(inverse: (u: number) => number, knots: number = DEFAULT_KNOTS) {
    const cells = knots / (2 * OCTAVES);
    if (!(Number.isInteger(cells) && cells > 0)) {
      throw new RangeError(`The number of knots must be a positive multiple of ${2 * OCTAVES}, not ${knots}`);
    }
    this.#inverse = inverse;
    this.#cells = cells;
    const positions = knotPositions(cells);
    const last = positions.length - 1;
    const lower = positions.map(inverse);
    const upper = positions.map((distance) => inverse(1 - distance));
    // An inverse that is found by iteration may waver in its last digits; the table must not.
    for (let knot = 1; knot <= last; knot++) lower[knot] = Math.max(at(lower, knot), at(lower, knot - 1));
    upper[last] = at(lower, last);
    for (let knot = last - 1; knot >= 0; knot--) upper[knot] = Math.max(at(upper, knot), at(upper, knot + 1));
    if (!(lower.every(Number.isFinite) && upper.every(Number.isFinite))) {
      throw new RangeError('The inverse function is not finite at every knot');
    }
    this.#lower = withSlopes(positions, lower);
    this.#upper = withSlopes(positions, upper);
  }

  /**
   * The inverse at u. Allocates nothing.
   * @param u strictly between 0 and 1
   * @throws RangeError when u is not
   */
  value(u: number): number {
    const isLower = u < 0.5;
    const distance = isLower ? u : 1 - u;
    if (!(distance >= LOWEST)) return this.#beyond(u);
    const pairs = isLower ? this.#lower : this.#upper;
    const octave = Math.clz32(distance * DRAWS);
    const scale = SCALES[octave] as number;
    const position = (distance * scale - 1) * this.#cells;
    const cell = position | 0;
    const t = position - cell;
    const width = 1 / (scale * this.#cells);
    const knot = 2 * ((OCTAVES - octave) * this.#cells + cell);
    const start = pairs[knot] as number;
    const startRise = (pairs[knot + 1] as number) * width;
    const rise = (pairs[knot + 2] as number) - start;
    const endRise = (pairs[knot + 3] as number) * width;
    const cubic = startRise + endRise - 2 * rise;
    return start + t * (startRise + t * (rise - startRise - cubic + t * cubic));
  }

  #beyond(u: number): number {
    if (!(u > 0 && u < 1)) throw new RangeError(`u must lie strictly between 0 and 1, not ${u}`);
    const edge = this.#inverse(u);
    return u < 0.5 ? Math.min(edge, at(this.#lower, 0)) : Math.max(edge, at(this.#upper, 0));
  }
}

/** Distances of the knots from the end, ascending from 2^-33 to 2^-1. */
function knotPositions(cells: number): Float64Array {
  const positions = new Float64Array(OCTAVES * cells + 1);
  for (let knot = 0; knot < positions.length; knot++) {
    const octave = Math.floor(knot / cells);
    positions[knot] = LOWEST * 2 ** octave * (1 + (knot % cells) / cells);
  }
  return positions;
}

/** Pairs (value, slope) for each knot, and one idle pair behind, for a distance of exactly one half. */
function withSlopes(positions: Float64Array, values: Float64Array): Float64Array {
  const last = positions.length - 1;
  const pairs = new Float64Array(2 * (last + 2));
  for (let knot = 0; knot <= last; knot++) {
    pairs[2 * knot] = at(values, knot);
    pairs[2 * knot + 1] = knotSlope(positions, values, knot);
  }
  pairs[2 * last + 2] = at(values, last);
  return pairs;
}

/** Slope at a knot: harmonic mean of the slopes beside it, at an end the slope of the only neighbour. */
function knotSlope(positions: Float64Array, values: Float64Array, knot: number): number {
  const last = positions.length - 1;
  if (knot === 0) return cellSlope(positions, values, 0);
  if (knot === last) return cellSlope(positions, values, last - 1);
  const before = cellSlope(positions, values, knot - 1);
  const after = cellSlope(positions, values, knot);
  if (before * after <= 0) return 0;
  const widthBefore = at(positions, knot) - at(positions, knot - 1);
  const widthAfter = at(positions, knot + 1) - at(positions, knot);
  const weightBefore = widthBefore + 2 * widthAfter;
  const weightAfter = 2 * widthBefore + widthAfter;
  return (weightBefore + weightAfter) / (weightBefore / before + weightAfter / after);
}

function cellSlope(positions: Float64Array, values: Float64Array, cell: number): number {
  return (at(values, cell + 1) - at(values, cell)) / (at(positions, cell + 1) - at(positions, cell));
}

function at(values: Float64Array, index: number): number {
  return values[index] as number;
}
