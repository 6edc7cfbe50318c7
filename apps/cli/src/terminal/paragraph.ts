import { harmless } from './style.ts';

const WIDEST = 100;
const NARROWEST = 40;

/**
 * Lines of a sentence, broken between words at the width of the terminal, a hundred letters at most.
 * @param mark stands before the first line; the others are set in by as much
 */
export function paragraph(text: string, mark: string): string {
  const widest = Math.max(NARROWEST, Math.min(WIDEST, process.stdout.columns ?? WIDEST));
  const indent = ' '.repeat(mark.length);
  const lines: string[] = [];
  let line = mark;
  let empty = true;
  for (const word of harmless(text).split(' ')) {
    if (!empty && line.length + 1 + word.length > widest) {
      lines.push(line);
      line = indent;
      empty = true;
    }
    line += empty ? word : ` ${word}`;
    empty = false;
  }
  return [...lines, line].join('\n');
}
