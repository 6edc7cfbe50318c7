/** Digits kept of a number: more than an interval needs, fewer than the last places in which engines may differ. */
const DIGITS = 6;

export function rounded(value: number): number {
  return Number(value.toPrecision(DIGITS));
}
