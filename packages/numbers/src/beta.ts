import { logGamma, stirlingRemainder } from './gamma.ts';

const TINY = 1e-300;
const LONGEST = 100_000;
const STIRLING_FROM = 10;

/**
 * The regularized incomplete beta function I_x(a, b), to about 1e-13.
 * Continued fraction by the modified method of Lentz. Source: NIST Digital Library of Mathematical Functions,
 * 8.17.22 and 8.17.4.
 * @throws RangeError unless a, b > 0 and 0 ≤ x ≤ 1
 */
export function regularizedBeta(x: number, a: number, b: number): number {
  if (!(a > 0 && b > 0 && a + b < Number.POSITIVE_INFINITY && x >= 0 && x <= 1)) {
    throw new RangeError(`The incomplete beta function is not defined at x = ${x}, a = ${a}, b = ${b}`);
  }
  if (x === 0 || x === 1) return x;
  // The fraction converges fast on the side of the mean that x lies on.
  return x <= (a + 1) / (a + b + 2)
    ? (betaPower(x, a, b) / a) * betaFraction(x, a, b)
    : 1 - (betaPower(x, a, b) / b) * betaFraction(1 - x, b, a);
}

/**
 * x^a (1 − x)^b / B(a, b). With both parameters large the logarithms cancel, so the distance from the mean is
 * taken out first, as A. R. DiDonato and A. H. Morris do, "Algorithm 708: Significant digit computation of the
 * incomplete beta function ratios", ACM Transactions on Mathematical Software 18 (1992), section 2.
 */
export function betaPower(x: number, a: number, b: number): number {
  if (a < STIRLING_FROM || b < STIRLING_FROM) {
    return Math.exp(a * Math.log(x) + b * Math.log1p(-x) - logBeta(a, b));
  }
  const mean = a / (a + b);
  const rest = b / (a + b);
  const exponent = a * excess((x - mean) / mean, x / mean) + b * excess((mean - x) / rest, (1 - x) / rest);
  const remainder = stirlingRemainder(a + b) - stirlingRemainder(a) - stirlingRemainder(b);
  return Math.sqrt((mean * b) / (2 * Math.PI)) * Math.exp(remainder - exponent);
}

/** ln B(a, b), without the loss of digits that three large logarithms of the gamma function would bring. */
export function logBeta(a: number, b: number): number {
  const small = Math.min(a, b);
  const large = Math.max(a, b);
  if (large < STIRLING_FROM) return logGamma(small) + logGamma(large) - logGamma(small + large);
  const growth =
    (large - 0.5) * Math.log1p(small / large) +
    small * Math.log(small + large) -
    small +
    stirlingRemainder(small + large) -
    stirlingRemainder(large);
  return logGamma(small) - growth;
}

/** e − ln(1 + e), where 1 + e is handed over too because it is lost in e when e is close to −1. */
function excess(e: number, onePlus: number): number {
  return e - (Math.abs(e) < 0.5 ? Math.log1p(e) : Math.log(onePlus));
}

function betaFraction(x: number, a: number, b: number): number {
  let c = 1;
  let d = 1 / awayFromZero(1 - ((a + b) * x) / (a + 1));
  let fraction = d;
  for (let m = 1; m <= LONGEST; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / awayFromZero(1 + even * d);
    c = awayFromZero(1 + even / c);
    fraction *= c * d;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / awayFromZero(1 + odd * d);
    c = awayFromZero(1 + odd / c);
    const factor = c * d;
    fraction *= factor;
    if (Math.abs(factor - 1) < 3e-16) return fraction;
  }
  throw new RangeError(`The incomplete beta function does not converge at x = ${x}, a = ${a}, b = ${b}`);
}

function awayFromZero(value: number): number {
  return Math.abs(value) < TINY ? TINY : value;
}
