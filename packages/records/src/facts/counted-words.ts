/** The word that was counted most often; the first of those that are equal, null when there is none. */
export function mostOf(counts: ReadonlyMap<string, number>): string | null {
  let best: string | null = null;
  let most = 0;
  for (const [word, count] of counts) {
    if (count > most) {
      best = word;
      most = count;
    }
  }
  return best;
}

/** How often each word comes; null does not count. */
export function countsOf(words: Iterable<string | null>): Map<string, number> {
  const counts = new Map<string, number>();
  for (const word of words) if (word !== null) counts.set(word, (counts.get(word) ?? 0) + 1);
  return counts;
}
