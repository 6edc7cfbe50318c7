const HALF_LOG_TWO_PI = 0.9189385332046728;
/** From here up the Stirling series below is exact to the last bit or two. */
const STIRLING_FROM = 10;

/**
 * ln Γ(x) for x > 0, to about 1e-15 of max(1, |ln Γ|).
 * Stirling's series after the recurrence Γ(x + 1) = x Γ(x). Source: NIST Digital Library of Mathematical
 * Functions, 5.11.1 and 5.5.1.
 * @throws RangeError when x is not positive and finite
 */
export function logGamma(x: number): number {
  if (!(x > 0 && x < Number.POSITIVE_INFINITY)) {
    throw new RangeError(
      `The logarithm of the gamma function is asked for at ${x}, which is not positive and finite`,
    );
  }
  let shifted = x;
  let product = 1;
  while (shifted < STIRLING_FROM) {
    product *= shifted;
    shifted++;
  }
  return (
    (shifted - 0.5) * Math.log(shifted) -
    shifted +
    HALF_LOG_TWO_PI +
    stirlingRemainder(shifted) -
    Math.log(product)
  );
}

/**
 * Γ(x) for x > 0; Infinity above about 171.6, where it leaves the range of a double. Exact for whole numbers
 * up to 23, else to about 1e-13.
 * @throws RangeError when x is not positive and finite
 */
export function gammaFunction(x: number): number {
  if (Number.isInteger(x) && x >= 1 && x <= 171) {
    let product = 1;
    for (let factor = 2; factor < x; factor++) product *= factor;
    return product;
  }
  return Math.exp(logGamma(x));
}

/**
 * ln Γ(x) − (x − ½) ln x + x − ½ ln 2π, for x of at least 10.
 * Source: NIST Digital Library of Mathematical Functions, 5.11.1 (Bernoulli numbers up to B16).
 */
export function stirlingRemainder(x: number): number {
  const inverseSquare = 1 / (x * x);
  let sum = -3617 / 122400;
  sum = sum * inverseSquare + 1 / 156;
  sum = sum * inverseSquare - 691 / 360360;
  sum = sum * inverseSquare + 1 / 1188;
  sum = sum * inverseSquare - 1 / 1680;
  sum = sum * inverseSquare + 1 / 1260;
  sum = sum * inverseSquare - 1 / 360;
  sum = sum * inverseSquare + 1 / 12;
  return sum / x;
}
