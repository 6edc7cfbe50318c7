import { netPresentValue } from './present-value.ts';

/** Nobody asks what a hundredfold return a year is exactly. */
const HIGHEST_RATE = 100;
const LOWEST_RATE = -0.999_999;

/**
 * Internal rate of return: the yearly rate at which the flows are worth nothing on balance.
 *
 * Flows that change their sign more than once may have several such rates, so that none of them means anything. One
 * is given only when it is sure to be the only one: one change of sign (Descartes), or running totals that begin
 * below zero and change their sign once (C. J. Norstrøm, "A sufficient condition for a unique nonnegative internal
 * rate of return", Journal of Financial and Quantitative Analysis 7, 1972, from memory).
 * @param flows as for the net present value
 * @returns null where there is none, or perhaps several; 100 (10,000 %) where it is that or more
 * @throws RangeError for a flow that is not finite
 */
export function internalRate(flows: readonly number[]): number | null {
  const isSingle = signChanges(flows) === 1 || signChanges(runningTotals(flows)) === 1;
  if (!isSingle || (flows.find((flow) => flow !== 0) ?? 0) > 0) return null;
  if (netPresentValue(flows, HIGHEST_RATE) >= 0) return HIGHEST_RATE;
  // By Norstrøm only the rates from zero up are known to have one root.
  let low = signChanges(flows) === 1 ? LOWEST_RATE : 0;
  if (netPresentValue(flows, low) <= 0) return null;
  let high = HIGHEST_RATE;
  for (;;) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) return middle;
    if (netPresentValue(flows, middle) > 0) low = middle;
    else high = middle;
  }
}

function runningTotals(flows: readonly number[]): number[] {
  let total = 0;
  return flows.map((flow) => {
    total += flow;
    return total;
  });
}

function signChanges(values: readonly number[]): number {
  const signs = values.filter((value) => value !== 0).map(Math.sign);
  return signs.filter((sign, index) => index > 0 && sign !== signs[index - 1]).length;
}
