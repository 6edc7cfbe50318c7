/** A number with the ends of its interval, each as it is written; no ends where rounding leaves nothing of them. */
export interface Figure {
  readonly value: string;
  readonly range: { readonly low: string; readonly high: string } | null;
}

const MOST_DECIMALS = 2;
/** Relative width below which an interval is only rounding. */
const NO_WIDTH = 1e-7;

/**
 * Decimals that a number deserves: those of the first digit of the width of its interval, at least those asked for
 * and at most two. A number without any uncertainty shows the decimals that it has.
 *
 * @param value the number, in the unit in which it is written
 * @param width of its interval, in the same unit
 * @param least decimals that are always shown
 */
export function decimalsFor(value: number, width: number, least: number): number {
  if (Number.isFinite(width) && width > NO_WIDTH * Math.abs(value)) {
    return Math.min(MOST_DECIMALS, Math.max(least, -Math.floor(Math.log10(width))));
  }
  const own =
    value
      .toFixed(MOST_DECIMALS)
      .replace(/\.?0+$/, '')
      .split('.')[1]?.length ?? 0;
  return Math.max(least, own);
}

/** A number with a fixed count of decimals; never "-0". */
export function formatNumber(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace('-', '') : text;
}

/**
 * A number and its interval as every page, table and sentence writes them, so that the same figure has the same
 * digits everywhere. A decimal is added where an end would look like the number; where all three still come out alike,
 * the number stands alone.
 *
 * @param interval in base units; where it has no value of its own, as a prediction, its low end is taken
 * @param size base units in the unit in which it is written
 * @param least decimals that are always shown
 */
export function figureOf(
  interval: { readonly value?: number; readonly low: number; readonly high: number },
  size: number,
  least: number,
): Figure {
  const middle = interval.value ?? interval.low;
  let decimals = decimalsFor(middle / size, (interval.high - interval.low) / size, least);
  const text = (one: number): string => formatNumber(one / size, decimals);
  const isApart = (end: number): boolean => Math.abs(end - middle) > NO_WIDTH * Math.abs(middle);
  const hidesAnEnd = (end: number): boolean => isApart(end) && text(end) === text(middle);
  while (decimals < MOST_DECIMALS && (hidesAnEnd(interval.low) || hidesAnEnd(interval.high))) decimals++;
  const value = text(middle);
  const range = { low: text(interval.low), high: text(interval.high) };
  return { value, range: range.low === value && range.high === value ? null : range };
}
