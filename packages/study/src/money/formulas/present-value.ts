import { checkFinite, checkRate } from './checks.ts';

/**
 * Net present value of yearly flows: the first is now and is not discounted, every other stands at the end of its
 * year.
 * Source: W. G. Sullivan, E. M. Wicks and C. P. Koelling, Engineering Economy, chapter 5, present worth method (from
 * memory); elementary.
 * @param flows money that comes in (above zero) or goes out (below), one for each year from year 0 on
 * @param rate yearly interest, 0.08 for 8 %
 * @throws RangeError for a rate of -1 or less, or a flow that is not finite
 */
export function netPresentValue(flows: readonly number[], rate: number): number {
  checkRate(rate);
  let value = 0;
  // From the last year to the first: each step discounts all that comes later by one year.
  for (let year = flows.length - 1; year >= 0; year--) {
    const flow = flows[year] as number;
    checkFinite('flow', flow);
    value = value / (1 + rate) + flow;
  }
  return value;
}

/**
 * The same flows with all of them discounted, the first by one year: as if each stood at the end of its year, the
 * first as well.
 * Source: as above.
 * @throws RangeError as above
 */
export function presentValueFromYearOne(flows: readonly number[], rate: number): number {
  return netPresentValue(flows, rate) / (1 + rate);
}
