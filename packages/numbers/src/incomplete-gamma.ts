import { logGamma } from './gamma.ts';

const PRECISION = 1e-15;
const MOST_TERMS = 100_000;
const SMALLEST = 1e-300;

/**
 * The regularized incomplete gamma functions P(a, x) and Q(a, x) = 1 − P(a, x), each relatively accurate (about 1e-12)
 * where it is the smaller one.
 * Series for x < a + 1, else the continued fraction by the modified method of Lentz. Source: NIST Digital Library of
 * Mathematical Functions, 8.11.4 and 8.9.2.
 * @throws RangeError unless a is positive and finite and x is at least 0
 */
export function incompleteGamma(a: number, x: number): { readonly lower: number; readonly upper: number } {
  if (!(a > 0 && Number.isFinite(a))) throw new RangeError(`The shape must be positive and finite, not ${a}`);
  if (!(x >= 0)) throw new RangeError(`The argument must be at least 0, not ${x}`);
  if (x === 0) return { lower: 0, upper: 1 };
  if (x === Number.POSITIVE_INFINITY) return { lower: 1, upper: 0 };
  const front = Math.exp(a * Math.log(x) - x - logGamma(a));
  if (x < a + 1) {
    const lower = Math.min(1, front * series(a, x));
    return { lower, upper: 1 - lower };
  }
  const upper = Math.min(1, front * continuedFraction(a, x));
  return { lower: 1 - upper, upper };
}

/** Probability that a chi-square variable exceeds a value. @throws RangeError as for the incomplete gamma function */
export function chiSquareUpper(value: number, degreesOfFreedom: number): number {
  return incompleteGamma(degreesOfFreedom / 2, value / 2).upper;
}

function series(a: number, x: number): number {
  let term = 1 / a;
  let total = term;
  for (let n = 1; n < MOST_TERMS; n++) {
    term *= x / (a + n);
    total += term;
    if (term < total * PRECISION) break;
  }
  return total;
}

function continuedFraction(a: number, x: number): number {
  let b = x + 1 - a;
  let c = 1 / SMALLEST;
  let d = 1 / (b === 0 ? SMALLEST : b);
  let result = d;
  for (let n = 1; n < MOST_TERMS; n++) {
    const numerator = -n * (n - a);
    b += 2;
    d = numerator * d + b;
    if (Math.abs(d) < SMALLEST) d = SMALLEST;
    c = b + numerator / c;
    if (Math.abs(c) < SMALLEST) c = SMALLEST;
    d = 1 / d;
    const change = d * c;
    result *= change;
    if (Math.abs(change - 1) < PRECISION) break;
  }
  return result;
}
