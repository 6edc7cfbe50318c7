/** Histories count whole milliseconds, results hours. */
export const MILLISECONDS_PER_HOUR = 3_600_000;
export const MILLISECONDS_PER_WEEK = 168 * MILLISECONDS_PER_HOUR;

/** Hours, in a new array. */
export function toHours(milliseconds: Float64Array): Float64Array {
  return milliseconds.map((value) => value / MILLISECONDS_PER_HOUR);
}
