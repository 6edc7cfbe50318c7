import { MILLISECONDS_PER_HOUR } from '@buildweek/core';

/** Histories count whole milliseconds, results hours. @returns hours, in a new array */
export function toHours(milliseconds: Float64Array): Float64Array {
  return milliseconds.map((value) => value / MILLISECONDS_PER_HOUR);
}
