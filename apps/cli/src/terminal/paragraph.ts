import { harmless } from './style.ts';
import { filled } from './wrap.ts';

const WIDEST = 100;
const NARROWEST = 40;

/**
 * Lines of a sentence, broken between words at the width of the terminal, a hundred letters at most.
 * @param mark stands before the first line; the others are set in by as much
 */
export function paragraph(text: string, mark: string): string {
  const widest = Math.max(NARROWEST, Math.min(WIDEST, process.stdout.columns ?? WIDEST));
  const indent = ' '.repeat(mark.length);
  return filled(harmless(text).split(' '), widest - mark.length)
    .map((line, index) => (index === 0 ? mark : indent) + line)
    .join('\n');
}
