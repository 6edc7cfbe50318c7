import type { Overtaking } from '@buildweek/results';

/** Hours until all pieces are finished, at the quantities of a grid; Infinity when they never are. */
export type Curve = readonly number[];

/**
 * From which place of the grid on one way is ahead of another, after having been behind it somewhere before.
 *
 * @returns null when it is never behind, or not ahead at the end
 */
export function overtakesAt(slower: Curve, faster: Curve): number | null {
  for (let place = slower.length - 1; place >= 0; place--) {
    const isAhead = (faster[place] ?? 0) < (slower[place] ?? 0);
    if (!isAhead) return place === slower.length - 1 ? null : place + 1;
  }
  return null;
}

/**
 * The smallest quantity from which on `isAhead` holds, between one at which it does not and one at which it does.
 * Times have steps (a night, a further build), so of several changes in between one is found.
 */
export function refine(behind: number, ahead: number, isAhead: (quantity: number) => boolean): number {
  let low = behind;
  let high = ahead;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (isAhead(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/**
 * The spread of an overtaking over plays.
 *
 * @param grid quantities, ascending
 * @param plays for each play the curves of the way that is overtaken and of the one that overtakes
 */
export function spreadOfOvertaking(
  grid: readonly number[],
  plays: readonly (readonly [Curve, Curve])[],
): Pick<Overtaking, 'low' | 'high'> {
  const quantities = plays
    .map(([slower, faster]) => {
      const place = overtakesAt(slower, faster);
      if (place !== null) return grid[place] ?? Number.POSITIVE_INFINITY;
      const isAlwaysAhead = faster.every((hours, index) => hours < (slower[index] ?? 0));
      return isAlwaysAhead ? (grid[0] ?? 1) : Number.POSITIVE_INFINITY;
    })
    .sort((a, b) => (a === b ? 0 : a - b));
  const at = (share: number): number =>
    quantities[Math.min(quantities.length - 1, Math.floor(share * quantities.length))] ??
    Number.POSITIVE_INFINITY;
  const low = at(0.1);
  const high = at(0.9);
  const largest = grid.at(-1) ?? 1;
  return { low: Number.isFinite(low) ? low : largest, high: Number.isFinite(high) ? high : null };
}
