/** @throws RangeError unless 0 < p < 1 */
export function checkProbability(p: number): void {
  if (!(p > 0 && p < 1)) throw new RangeError(`A probability must lie strictly between 0 and 1, not ${p}`);
}

/** @throws RangeError unless the value is positive and finite */
export function checkPositive(name: string, value: number): void {
  if (!(value > 0 && value < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`The ${name} must be positive and finite, not ${value}`);
  }
}
