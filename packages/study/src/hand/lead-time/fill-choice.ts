/** Steps between the least full and the full build that are looked at. */
const STEPS = 10;

/**
 * Builds that may start with little in them start early and often; fuller ones wait to fill and take longer, but come
 * seldom. The mean time in batching and queue has a smallest value in between, and a lab that starts whatever waits as
 * soon as a machine is free comes near it: what waits fills the next build (Hopp and Spearman, "Factory Physics" (3rd
 * ed. 2008), section 9.4, parallel batching, for the smallest value; that such a lab comes near it: no source).
 *
 * @param least do not look below
 * @param hours mean hours of batching, queue and run when everything is so full; Infinity when it cannot keep up
 */
export function chooseFullness(least: number, hours: (fullness: number) => number): number {
  let best = 1;
  let bestHours = hours(1);
  for (let step = STEPS - 1; step >= 0; step--) {
    const fullness = step / STEPS;
    if (fullness < least) break;
    const found = hours(fullness);
    if (found < bestHours) {
      best = fullness;
      bestHours = found;
    }
  }
  return best;
}

/** A fill between the least (at fullness 0) and 1. */
export function fillAt(leastFill: number, fullness: number): number {
  return leastFill + fullness * (1 - leastFill);
}
