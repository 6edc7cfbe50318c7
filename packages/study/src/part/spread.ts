import type { Spread } from '@buildweek/results';

/** What one play in ten stays below, and one in ten above, beside the typical value. */
export function spreadOf(typical: number, plays: readonly number[]): Spread {
  const sorted = [...plays].sort((a, b) => a - b);
  const at = (share: number): number => sorted[Math.floor(share * (sorted.length - 1) + 0.5)] ?? typical;
  return { typical, low: at(0.1), high: at(0.9) };
}
