import { textWidth } from '../text-width.ts';

/**
 * Pieces of text in lines of at most a width; a piece is never broken.
 *
 * @param pieces in their order
 * @param separator between pieces; where a line ends it stays at its end
 * @param width room for a line, CSS pixels
 * @param fontSize CSS pixels
 */
export function wrapLines(
  pieces: readonly string[],
  separator: string,
  width: number,
  fontSize: number,
): string[] {
  const lines: string[] = [];
  let line = '';
  pieces.forEach((piece, index) => {
    const words = index === pieces.length - 1 ? piece : `${piece}${separator}`;
    if (line !== '' && textWidth((line + words).trimEnd(), fontSize) > width) {
      lines.push(line.trimEnd());
      line = '';
    }
    line += words;
  });
  return line === '' ? lines : [...lines, line.trimEnd()];
}
