import { checkShare } from './checks.ts';

/** The nine definitions of a sample quantile, numbered as in the source named at `quantile`. */
export type QuantileType = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8 | 9;

/** For the definitions that interpolate: plotting position (k − a) / (n + 1 − a − b) of the k-th value. */
const PLOTTING: Readonly<Record<Exclude<QuantileType, 1 | 2 | 3>, readonly [number, number]>> = {
  4: [0, 1],
  5: [0.5, 0.5],
  6: [0, 0],
  7: [1, 1],
  8: [1 / 3, 1 / 3],
  9: [3 / 8, 3 / 8],
};

/** A position this close to a whole number, relatively, is taken for the number: 0.95 × 20 is 19. */
const ROUNDING = 4 * Number.EPSILON;

/**
 * A sample quantile. Values may be infinite.
 * Source: R. J. Hyndman and Y. Fan, "Sample quantiles in statistical packages", The American Statistician 50
 * (1996), 361–365.
 * @param sorted ascending, at least one value
 * @param type 1 is the inverse of the empirical distribution, 7 the most widespread interpolation
 * @throws RangeError for no values, or unless 0 < p < 1
 */
export function quantile(sorted: ArrayLike<number>, p: number, type: QuantileType): number {
  checkShare('share', p);
  const n = sorted.length;
  if (n === 0) throw new RangeError('A quantile needs at least one value');
  if (type === 1 || type === 2 || type === 3) {
    const { whole, rest } = split(type === 3 ? n * p - 0.5 : n * p);
    const stay = type === 3 ? whole % 2 === 0 : type === 2;
    if (rest > 0 || (type === 3 && !stay)) return valueAt(sorted, whole + 1);
    return type === 2 ? between(sorted, whole, 0.5) : valueAt(sorted, whole);
  }
  const [a, b] = PLOTTING[type];
  const { whole, rest } = split(a + p * (n + 1 - a - b));
  return between(sorted, whole, rest);
}

/** Rank of the p-quantile of n values by definition 1: the smallest k with k / n ≥ p. */
export function quantileRank(n: number, p: number): number {
  const { whole, rest } = split(n * p);
  return rest > 0 ? whole + 1 : whole;
}

function split(position: number): { whole: number; rest: number } {
  const nearest = Math.round(position);
  if (Math.abs(position - nearest) <= ROUNDING * Math.max(1, position)) return { whole: nearest, rest: 0 };
  const whole = Math.floor(position);
  return { whole, rest: position - whole };
}

/** Between the value of rank k and the next. */
function between(sorted: ArrayLike<number>, k: number, share: number): number {
  const low = valueAt(sorted, k);
  const high = valueAt(sorted, k + 1);
  return share === 0 || low === high ? low : (1 - share) * low + share * high;
}

/** The value of rank k, counted from 1; beyond the ends the outermost value. */
function valueAt(sorted: ArrayLike<number>, k: number): number {
  return sorted[Math.min(Math.max(k, 1), sorted.length) - 1] as number;
}
