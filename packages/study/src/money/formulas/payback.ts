import { checkFinite, checkRate } from './checks.ts';

/**
 * Years until what was laid out has come back, for good: from then on the running total of the flows stays at zero
 * or above. Within a year money comes in evenly.
 * Source: W. G. Sullivan, E. M. Wicks and C. P. Koelling, Engineering Economy, chapter 5, payback period (from
 * memory), made to hold for flows that fall below zero again, as when a machine is replaced.
 * @param flows as for the net present value
 * @returns 0 when nothing is ever out; Infinity when it does not come back within the flows
 * @throws RangeError for a flow that is not finite
 */
export function paybackYears(flows: readonly number[]): number {
  return discountedPaybackYears(flows, 0);
}

/**
 * The same with every flow discounted to year 0. Source: as above.
 * @param rate yearly interest, 0.08 for 8 %
 * @throws RangeError as above, or for a rate of -1 or less
 */
export function discountedPaybackYears(flows: readonly number[], rate: number): number {
  checkRate(rate);
  let total = 0;
  let payback = 0;
  flows.forEach((flow, year) => {
    checkFinite('flow', flow);
    const value = flow / (1 + rate) ** year;
    if (total + value < 0) payback = Number.POSITIVE_INFINITY;
    else if (payback === Number.POSITIVE_INFINITY) payback = year - 1 + -total / value;
    total += value;
  });
  return payback;
}
