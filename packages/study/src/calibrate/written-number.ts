const FEWEST_DIGITS = 2;
const MOST_DIGITS = 5;
/** Digits of a number of which nothing says how well it is known. */
const USUAL_DIGITS = 4;
/** The last digit counts at most this share of the standard error. */
const ROUNDING_SHARE = 0.1;

/**
 * A number above zero as a scenario takes it: with the digits that its standard error leaves a meaning, and at least
 * two. Never with an exponent.
 */
export function writtenNumber(value: number, standardError: number | null): string {
  if (value === 0) return '0';
  const digits =
    standardError === null || standardError <= 0
      ? USUAL_DIGITS
      : 1 + Math.floor(Math.log10(value)) - Math.floor(Math.log10(ROUNDING_SHARE * standardError));
  return withDigits(value, Math.min(MOST_DIGITS, Math.max(FEWEST_DIGITS, digits)));
}

/** A number above zero with so many digits that count, without zeros behind them. */
export function withDigits(value: number, digits: number): string {
  const rounded = Number(value.toPrecision(digits));
  const decimals = digits - 1 - Math.floor(Math.log10(rounded));
  return String(
    Number.isInteger(rounded) ? rounded : rounded.toFixed(Math.max(0, decimals)).replace(/0+$/, ''),
  );
}
