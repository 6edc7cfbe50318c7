import { root } from '../durations/maximize.ts';

/**
 * Where n times the square of the distance is larger, the probability of more is below the last digit of a double: it is
 * at most 2 exp(−2 n d²). Source: P. Massart, "The tight constant in the Dvoretzky–Kiefer–Wolfowitz inequality", Annals of
 * Probability 18 (1990), 1269–1283.
 */
const NO_TAIL = 18.5;

/**
 * Exact probability that the Kolmogorov distance of n values from their own law stays below d.
 * Source: G. Marsaglia, W. W. Tsang and J. Wang, "Evaluating Kolmogorov's distribution", Journal of Statistical Software 8
 * (2003), no. 18.
 * @throws RangeError unless n is whole and positive
 */
export function kolmogorovCumulative(n: number, d: number): number {
  if (!(Number.isInteger(n) && n > 0))
    throw new RangeError(`There must be a whole number of values, not ${n}`);
  if (d <= 0) return 0;
  if (d >= 1 || n * d * d > NO_TAIL) return 1;
  const k = Math.floor(n * d) + 1;
  const size = 2 * k - 1;
  const h = k - n * d;
  const matrix = hMatrix(size, h);
  const { values, exponent } = power(matrix, size, n);
  let result = values[(k - 1) * size + k - 1] ?? 0;
  let scale = exponent;
  for (let i = 1; i <= n; i++) {
    result = (result * i) / n;
    if (result < 1e-140) {
      result *= 1e140;
      scale -= 140;
    }
  }
  return Math.min(1, result * 10 ** scale);
}

function hMatrix(size: number, h: number): Float64Array {
  const matrix = new Float64Array(size * size);
  for (let row = 0; row < size; row++) {
    for (let column = 0; column < size; column++) {
      matrix[row * size + column] = row - column + 1 < 0 ? 0 : 1;
    }
  }
  for (let i = 0; i < size; i++) {
    matrix[i * size] = (matrix[i * size] ?? 0) - h ** (i + 1);
    const last = (size - 1) * size + i;
    matrix[last] = (matrix[last] ?? 0) - h ** (size - i);
  }
  const corner = (size - 1) * size;
  matrix[corner] = (matrix[corner] ?? 0) + (2 * h - 1 > 0 ? (2 * h - 1) ** size : 0);
  for (let row = 0; row < size; row++) {
    for (let column = 0; column < size; column++) {
      for (let divisor = 1; divisor <= row - column + 1; divisor++) {
        matrix[row * size + column] = (matrix[row * size + column] ?? 0) / divisor;
      }
    }
  }
  return matrix;
}

interface Scaled {
  readonly values: Float64Array;
  /** The values are to be multiplied by 10 to this power. */
  readonly exponent: number;
}

function power(matrix: Float64Array, size: number, n: number): Scaled {
  if (n === 1) return { values: matrix, exponent: 0 };
  const half = power(matrix, size, Math.floor(n / 2));
  let { values, exponent } = { values: product(half.values, half.values, size), exponent: 2 * half.exponent };
  if (n % 2 === 1) values = product(matrix, values, size);
  if ((values[Math.floor(size / 2) * size + Math.floor(size / 2)] ?? 0) > 1e140) {
    values = values.map((value) => value * 1e-140);
    exponent += 140;
  }
  return { values, exponent };
}

function product(one: Float64Array, other: Float64Array, size: number): Float64Array {
  const result = new Float64Array(size * size);
  for (let row = 0; row < size; row++) {
    for (let inner = 0; inner < size; inner++) {
      const factor = one[row * size + inner] ?? 0;
      if (factor === 0) continue;
      for (let column = 0; column < size; column++) {
        const at = row * size + column;
        result[at] = (result[at] ?? 0) + factor * (other[inner * size + column] ?? 0);
      }
    }
  }
  return result;
}

/** Distance that n values exceed with the stated probability when they follow their law. */
export function kolmogorovCritical(n: number, alpha: number): number {
  return root((d) => kolmogorovCumulative(n, d) - (1 - alpha), 0, 1);
}

/** The limit of √n times the critical distance. Source: N. Smirnov, Annals of Mathematical Statistics 19 (1948), 279–281. */
export function kolmogorovLimit(alpha: number): number {
  const exceeds = (x: number): number => {
    let total = 0;
    for (let k = 1; k <= 100; k++) total += (k % 2 === 1 ? 2 : -2) * Math.exp(-2 * k * k * x * x);
    return total;
  };
  return root((x) => alpha - exceeds(x), 0.2, 5);
}

/** A distance and how often chance alone gives one as large. */
export interface KolmogorovTest {
  readonly distance: number;
  readonly pValue: number;
}

/** Beyond so many values the exact computation gives way to the limit. */
const MOST_EXACT = 1000;

/**
 * Holds values against a law that is known beforehand: with parameters that were estimated from the same values the
 * probabilities would be wrong.
 * Source: as for the cumulative distribution.
 *
 * @param cumulative of the law
 * @throws RangeError without a value
 */
export function kolmogorovTest(
  values: readonly number[],
  cumulative: (value: number) => number,
): KolmogorovTest {
  if (values.length === 0) throw new RangeError('There is no value to test.');
  const n = values.length;
  const uniform = values.map(cumulative).sort((a, b) => a - b);
  const distance = uniform.reduce(
    (most, value, index) => Math.max(most, value - index / n, (index + 1) / n - value),
    0,
  );
  return {
    distance,
    pValue: n > MOST_EXACT ? limitProbability(distance, n) : 1 - kolmogorovCumulative(n, distance),
  };
}

function limitProbability(distance: number, n: number): number {
  const x = distance * Math.sqrt(n);
  let total = 0;
  for (let k = 1; k <= 100; k++) total += (k % 2 === 1 ? 2 : -2) * Math.exp(-2 * k * k * x * x);
  return Math.min(1, Math.max(0, total));
}

/**
 * Whether two samples without ties come from one law: exact, by counting paths.
 * Source: J. L. Hodges, "The significance probability of the Smirnov two-sample test", Arkiv för Matematik 3 (1958),
 * 469–486.
 * @throws RangeError when one of them is empty
 */
export function twoSampleKolmogorov(first: readonly number[], second: readonly number[]): KolmogorovTest {
  const [m, n] = [first.length, second.length];
  if (m === 0 || n === 0) throw new RangeError('There is no value to test.');
  const all = [
    ...first.map((value) => [value, 1 / m] as const),
    ...second.map((value) => [value, -1 / n] as const),
  ];
  all.sort((a, b) => a[0] - b[0]);
  let difference = 0;
  let distance = 0;
  for (const [index, [value, step]] of all.entries()) {
    difference += step;
    if (all[index + 1]?.[0] !== value) distance = Math.max(distance, Math.abs(difference));
  }
  return { distance, pValue: 1 - pathsWithin(m, n, distance) };
}

/** Share of all orders of two samples whose distance stays below d. */
function pathsWithin(m: number, n: number, d: number): number {
  // Distances that are equal must not be told apart by rounding.
  const limit = d - 1e-9;
  const within = (i: number, j: number): number => (Math.abs(i / m - j / n) < limit ? 1 : 0);
  let row = Array.from({ length: n + 1 }, () => 0);
  for (let i = 0; i <= m; i++) {
    const next = [...row];
    for (let j = 0; j <= n; j++) {
      const ways = i === 0 && j === 0 ? 1 : shareFrom(i, j, row, next);
      next[j] = within(i, j) * ways;
    }
    row = next;
  }
  return row[n] ?? 0;
}

/** Of all orders that lead to a place, so many come from above and from the left: hypergeometric shares. */
function shareFrom(i: number, j: number, above: readonly number[], left: readonly number[]): number {
  return ((i === 0 ? 0 : (above[j] ?? 0) * i) + (j === 0 ? 0 : (left[j - 1] ?? 0) * j)) / (i + j);
}
