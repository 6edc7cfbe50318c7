/** @throws RangeError for a number that is not finite */
export function checkFinite(name: string, value: number): void {
  if (!Number.isFinite(value)) throw new RangeError(`The ${name} is not a finite number: ${value}`);
}

/** @throws RangeError for a number that is not above zero */
export function checkAboveZero(name: string, value: number): void {
  if (!(value > 0 && Number.isFinite(value)))
    throw new RangeError(`The ${name} must be above 0, not ${value}`);
}

/** @throws RangeError for an amount below zero */
export function checkNotNegative(name: string, value: number): void {
  if (!(value >= 0 && Number.isFinite(value)))
    throw new RangeError(`The ${name} cannot be negative: ${value}`);
}

/** @throws RangeError for a yearly rate at which money would vanish */
export function checkRate(rate: number): void {
  if (!(rate > -1 && Number.isFinite(rate)))
    throw new RangeError(`An interest rate must be above -1, not ${rate}`);
}

/** @throws RangeError for something else than a whole number of at least 1 */
export function checkYears(years: number): void {
  if (!(Number.isInteger(years) && years >= 1)) {
    throw new RangeError(`The years must be a whole number of at least 1, not ${years}`);
  }
}
