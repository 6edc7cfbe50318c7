/** Letters of a text as they stand on a terminal. */
export function lengthOf(text: string): number {
  return Array.from(text).length;
}

/** Lines of at most so many letters, broken between words where that can be. */
export function wrapped(text: string, width: number): string[] {
  return filled(
    text.split(' ').flatMap((one) => pieces(one, width)),
    width,
  );
}

/** Lines that are filled with words; a word that is longer than a line stands out of it. */
export function filled(words: readonly string[], width: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of words) {
    if (line !== '' && lengthOf(line) + 1 + lengthOf(word) > width) {
      lines.push(line);
      line = word;
    } else {
      line = line === '' ? word : `${line} ${word}`;
    }
  }
  return [...lines, line];
}

/** A word that is longer than a line, in as many pieces as it takes. */
function pieces(word: string, width: number): string[] {
  const letters = Array.from(word);
  if (letters.length <= width) return [word];
  return Array.from({ length: Math.ceil(letters.length / width) }, (_, index) =>
    letters.slice(index * width, (index + 1) * width).join(''),
  );
}
