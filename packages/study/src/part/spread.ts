import type { Spread } from '@buildweek/results';

/** The one in the middle when they are put in order by a measure; of two in the middle the lower. */
export function middleOf<Item>(items: readonly Item[], measure: (item: Item) => number): Item {
  const sorted = [...items].sort((a, b) => compare(measure(a), measure(b)));
  return sorted[Math.floor((sorted.length - 1) / 2)] as Item;
}

/**
 * What one play in ten stays below, and one in ten above, beside the play in the middle.
 *
 * @param plays at least one
 */
export function spreadOf(plays: readonly number[]): Spread {
  const sorted = [...plays].sort(compare);
  const at = (share: number): number => sorted[Math.round(share * (sorted.length - 1))] as number;
  return { typical: middleOf(plays, (value) => value), low: at(0.1), high: at(0.9) };
}

/** Two that never end are equal, though they have no difference. */
function compare(a: number, b: number): number {
  return a === b ? 0 : a - b;
}
