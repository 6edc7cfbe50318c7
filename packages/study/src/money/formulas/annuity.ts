import { checkAboveZero, checkRate } from './checks.ts';

/**
 * Present worth of 1 at the end of each year: (P/A, i, n).
 * Source for this and the next three: interest factors of W. G. Sullivan, E. M. Wicks and C. P. Koelling, Engineering
 * Economy, chapter 4 (from memory); elementary.
 * @param rate yearly interest, 0.08 for 8 %
 * @param years above 0
 * @throws RangeError for a rate of -1 or less, or years that are not above 0
 */
export function presentWorthOfAnnuity(rate: number, years: number): number {
  checkRate(rate);
  checkAboveZero('number of years', years);
  return rate === 0 ? years : -Math.expm1(-years * Math.log1p(rate)) / rate;
}

/** What is to be paid at the end of each year for 1 now, the capital recovery factor: (A/P, i, n). Errors as above. */
export function capitalRecovery(rate: number, years: number): number {
  return 1 / presentWorthOfAnnuity(rate, years);
}

/** What 1 at the end of each year has become at the end: (F/A, i, n). Errors as above. */
export function futureWorthOfAnnuity(rate: number, years: number): number {
  return presentWorthOfAnnuity(rate, years) / presentWorth(rate, years);
}

/** Present worth of 1 at the end: (P/F, i, n). Errors as above. */
export function presentWorth(rate: number, years: number): number {
  checkRate(rate);
  checkAboveZero('number of years', years);
  return (1 + rate) ** -years;
}
