/** Simulation time is a whole number of milliseconds in a double; this module alone converts and rounds. */

export const MILLISECONDS_PER_HOUR = 3_600_000;
export const MILLISECONDS_PER_DAY = 24 * MILLISECONDS_PER_HOUR;
export const HOURS_PER_WEEK = 168;
export const MILLISECONDS_PER_WEEK = HOURS_PER_WEEK * MILLISECONDS_PER_HOUR;

/**
 * @param hours a duration or a time in hours
 * @returns the nearest whole number of milliseconds; infinity stays infinity
 */
export function toMilliseconds(hours: number): number {
  // The same as Math.round below 142,000 years; that branches on the fraction, which no processor can predict.
  return Math.floor(hours * MILLISECONDS_PER_HOUR + 0.5);
}

/** @returns hours, not rounded */
export function toHours(milliseconds: number): number {
  return milliseconds / MILLISECONDS_PER_HOUR;
}
