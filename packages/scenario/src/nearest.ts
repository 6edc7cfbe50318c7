import { distance } from 'fastest-levenshtein';

/**
 * The candidate that was most probably meant: the one with the fewest changed letters, when that is at most a
 * third of the word (two letters in short words). Case does not count.
 */
export function nearest(word: string, candidates: readonly string[]): string | null {
  let best: string | null = null;
  let bestDistance = Math.max(2, Math.floor(word.length / 3)) + 1;
  for (const candidate of candidates) {
    const changes = distance(word.toLowerCase(), candidate.toLowerCase());
    // With more changes than half the candidate has letters, hardly anything is left of it.
    if (changes < bestDistance && changes * 2 <= candidate.length) {
      best = candidate;
      bestDistance = changes;
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
