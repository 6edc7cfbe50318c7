/**
 * The candidate that was most probably meant: the one with the fewest slips, when these are at most a third of
 * the word (two in short words) and at most half of the candidate. Case does not count.
 */
export function nearest(word: string, candidates: readonly string[]): string | null {
  let best: string | null = null;
  let fewest = Math.max(2, Math.floor(word.length / 3)) + 1;
  for (const candidate of candidates) {
    const slips = slipsBetween(word.toLowerCase(), candidate.toLowerCase());
    // With more slips than half the candidate has letters, hardly anything is left of it.
    if (slips < fewest && slips * 2 <= candidate.length) {
      best = candidate;
      fewest = slips;
    }
  }
  return best;
}

/** `a, b or c`, at most `limit` of them. */
export function listed(words: readonly string[], limit = 8): string {
  if (words.length === 0) return 'nothing';
  if (words.length === 1) return words[0] ?? '';
  if (words.length > limit) return `${words.slice(0, limit).join(', ')} … (${words.length} in all)`;
  return `${words.slice(0, -1).join(', ')} or ${words[words.length - 1]}`;
}

/**
 * Letters added, left out, exchanged, or swapped with their neighbour to get from one word to the other: the
 * distance of Damerau (1964) with each letter changed once ("optimal string alignment").
 */
export function slipsBetween(from: string, to: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: to.length + 1 }, (_, index) => index);
  for (let row = 1; row <= from.length; row++) {
    const current = [row];
    for (let column = 1; column <= to.length; column++) {
      const same = from[row - 1] === to[column - 1];
      let slips = Math.min(
        (last[column] ?? 0) + 1,
        (current[column - 1] ?? 0) + 1,
        (last[column - 1] ?? 0) + (same ? 0 : 1),
      );
      const isSwap =
        row > 1 && column > 1 && from[row - 1] === to[column - 2] && from[row - 2] === to[column - 1];
      if (isSwap) slips = Math.min(slips, (beforeLast[column - 2] ?? 0) + 1);
      current.push(slips);
    }
    beforeLast = last;
    last = current;
  }
  return last[to.length] ?? 0;
}
