/** Letters that are written from right to left: Hebrew, Arabic and what is written like them. */
const RIGHT_TO_LEFT = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc]/;
const LEFT_TO_RIGHT = /[A-Za-z\u00c0-\u058f]/;

/**
 * The words of a line in the order in which they are seen from the left, for a drawer that sets one word after the
 * other: words that run from right to left stand in their own order where they follow each other. The drawer turns the
 * letters within a word.
 *
 * A part of the Unicode Bidirectional Algorithm (Unicode Standard Annex 9) only: lines begin at the left, a word has
 * one direction, numbers between two words stay where they are.
 */
export function seenFromLeft(line: string): string {
  if (!RIGHT_TO_LEFT.test(line)) return line;
  const words = line.split(' ');
  const isTurned = (word: string | undefined): boolean =>
    word !== undefined && RIGHT_TO_LEFT.test(word) && !LEFT_TO_RIGHT.test(word);
  const seen: string[] = [];
  for (let at = 0; at < words.length; ) {
    let end = at;
    while (isTurned(words[end])) end++;
    seen.push(...(end > at ? words.slice(at, end).reverse() : words.slice(at, at + 1)));
    at = Math.max(end, at + 1);
  }
  return seen.join(' ');
}
