const ASYMPTOTIC_FROM = 10;

/**
 * ψ(x) = d ln Γ(x) / dx for x > 0, to about 1e-14.
 * Asymptotic series after the recurrence ψ(x + 1) = ψ(x) + 1/x. Source: NIST Digital Library of Mathematical Functions,
 * 5.11.2 and 5.5.2.
 * @throws RangeError when x is not positive and finite
 */
export function digamma(x: number): number {
  checkArgument(x);
  let shifted = x;
  let sum = 0;
  while (shifted < ASYMPTOTIC_FROM) {
    sum -= 1 / shifted;
    shifted++;
  }
  const square = 1 / (shifted * shifted);
  const series =
    square * (1 / 12 - square * (1 / 120 - square * (1 / 252 - square * (1 / 240 - square * (1 / 132)))));
  return sum + Math.log(shifted) - 1 / (2 * shifted) - series;
}

/**
 * ψ′(x) for x > 0, to about 1e-13 relative.
 * Source: NIST Digital Library of Mathematical Functions, 5.15.8 and 5.15.5.
 * @throws RangeError when x is not positive and finite
 */
export function trigamma(x: number): number {
  checkArgument(x);
  let shifted = x;
  let sum = 0;
  while (shifted < ASYMPTOTIC_FROM) {
    sum += 1 / (shifted * shifted);
    shifted++;
  }
  const square = 1 / (shifted * shifted);
  const series =
    1 / 6 -
    square * (1 / 30 - square * (1 / 42 - square * (1 / 30 - square * (5 / 66 - square * (691 / 2730)))));
  return sum + 1 / shifted + square / 2 + (square / shifted) * series;
}

function checkArgument(x: number): void {
  if (!(x > 0 && Number.isFinite(x)))
    throw new RangeError(`The argument must be positive and finite, not ${x}`);
}
