/** @throws RangeError unless the value is a number above 0 */
export function checkPositive(name: string, value: number): void {
  if (!(value > 0 && Number.isFinite(value))) {
    throw new RangeError(`The ${name} must be above 0, not ${value}.`);
  }
}

/** @throws RangeError unless the value is a number from 0 up */
export function checkNotNegative(name: string, value: number): void {
  if (!(value >= 0 && Number.isFinite(value))) {
    throw new RangeError(`The ${name} must be 0 or more, not ${value}.`);
  }
}

/** @throws RangeError unless 0 <= value <= 1 */
export function checkShare(name: string, value: number): void {
  if (!(value >= 0 && value <= 1))
    throw new RangeError(`The ${name} must lie between 0 and 1, not ${value}.`);
}

/** @throws RangeError unless 0 < value <= 1 */
export function checkPositiveShare(name: string, value: number): void {
  checkShare(name, value);
  checkPositive(name, value);
}
