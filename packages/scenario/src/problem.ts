/** Something in a scenario file that is wrong (`error`) or probably not meant (`warning`). */
export interface Problem {
  readonly severity: 'error' | 'warning';
  readonly file: string;
  /** Counted from 1. */
  readonly line: number;
  /** Counted from 1, in UTF-16 code units. */
  readonly column: number;
  /** How many characters of the line are meant, at least 1. */
  readonly length: number;
  /** The line of the file, without its end. */
  readonly sourceLine: string;
  /** What is wrong, one sentence. */
  readonly message: string;
  /** What stands there; empty when nothing does. */
  readonly found: string;
  readonly expected: string;
  /** What to write instead. */
  readonly write: string;
}

const LONGEST_LINE = 110;

/**
 * The text of a problem for a terminal: where, what, the line itself with a mark under the place, what was
 * expected and what to write. Control characters of the file come out as a middle dot.
 */
export function formatProblem(problem: Problem): string {
  const number = String(problem.line);
  const margin = ' '.repeat(number.length);
  const { text, column } = excerpt(problem.sourceLine, problem.column);
  const length = Math.max(1, Math.min(problem.length, text.length - column + 1));
  const lines = [
    `${problem.file}:${problem.line}:${problem.column}: ${problem.severity}: ${problem.message}`,
    `  ${number} | ${text}`,
    `  ${margin} | ${' '.repeat(column - 1)}${'^'.repeat(length)}`,
  ];
  if (problem.found !== '') lines.push(`  found:    ${problem.found}`);
  if (problem.expected !== '') lines.push(`  expected: ${problem.expected}`);
  if (problem.write !== '') lines.push(`  write:    ${problem.write}`);
  return lines.map((line) => withoutControls(line)).join('\n');
}

/** The part of a long line around a column; columns count from 1. */
function excerpt(line: string, column: number): { text: string; column: number } {
  if (line.length <= LONGEST_LINE) return { text: line, column };
  const start = Math.max(0, Math.min(column - 1 - 40, line.length - LONGEST_LINE));
  const end = Math.min(line.length, start + LONGEST_LINE);
  const before = start > 0 ? '… ' : '';
  const after = end < line.length ? ' …' : '';
  return { text: `${before}${line.slice(start, end)}${after}`, column: column - start + before.length };
}

function withoutControls(text: string): string {
  // A tab becomes one space, so that the mark stays under its place.
  return text.replace(/\t/g, ' ').replace(/[\p{Cc}\p{Bidi_Control}]/gu, '·');
}
