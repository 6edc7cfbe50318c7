/** What stands between the cells of a table. */
export type Separator = ',' | ';' | '\t' | '|';

const SEPARATORS: readonly Separator[] = [';', '\t', '|', ','];

/** Lines that are looked at. */
const LINES = 100;

/**
 * The separator that cuts most lines into the same number of cells, the larger number where two do. Separators within
 * quotation marks do not count.
 *
 * @param text the start of a table
 * @returns null when no line has any
 */
export function guessSeparator(text: string): Separator | null {
  const told = /^\uFEFF?sep=(.)\r?\n/i.exec(text)?.[1];
  if (told !== undefined && isSeparator(told)) return told;
  let best: Separator | null = null;
  let most = 0;
  for (const separator of SEPARATORS) {
    const score = agreement(separatorCounts(text, separator));
    if (score > most) {
      best = separator;
      most = score;
    }
  }
  return best;
}

export function isSeparator(text: string): text is Separator {
  return SEPARATORS.some((separator) => separator === text);
}

/** How many of a separator each of the first lines has; what is quoted may run over line ends. */
function separatorCounts(text: string, separator: Separator): number[] {
  const counts: number[] = [];
  let count = 0;
  let isQuoted = false;
  let hasText = false;
  for (const character of text) {
    if (character === '"') isQuoted = !isQuoted;
    if (character === '\n' && !isQuoted) {
      if (hasText) counts.push(count);
      if (counts.length === LINES) return counts;
      count = 0;
      hasText = false;
    } else {
      if (character === separator && !isQuoted) count++;
      if (character.trim() !== '') hasText = true;
    }
  }
  if (hasText) counts.push(count);
  return counts;
}

/** Share of lines that have the most usual number of separators, and a little for each separator. */
function agreement(counts: readonly number[]): number {
  const lines = new Map<number, number>();
  for (const count of counts) if (count > 0) lines.set(count, (lines.get(count) ?? 0) + 1);
  let best = 0;
  for (const [count, number] of lines) {
    best = Math.max(best, (number / counts.length) * (1 + Math.min(count, 20) / 10));
  }
  return best;
}
