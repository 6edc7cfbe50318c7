import { harmless } from './style.ts';

const WIDEST = 100;

/**
 * Lines of a sentence, broken between words.
 * @param mark stands before the first line; the others are set in by as much
 */
export function paragraph(text: string, mark: string): string {
  const indent = ' '.repeat(mark.length);
  const lines: string[] = [];
  let line = mark;
  let empty = true;
  for (const word of harmless(text).split(' ')) {
    if (!empty && line.length + 1 + word.length > WIDEST) {
      lines.push(line);
      line = indent;
      empty = true;
    }
    line += empty ? word : ` ${word}`;
    empty = false;
  }
  return [...lines, line].join('\n');
}
