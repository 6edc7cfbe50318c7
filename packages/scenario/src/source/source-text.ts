import { LineCounter } from 'yaml';
import type { Problem } from '../problem.ts';
import type { SourceSpan } from './source-node.ts';

/** What is said about a place; the place is added by {@link SourceText.problem}. */
export interface ProblemDetail {
  readonly message: string;
  readonly found?: string;
  readonly expected: string;
  readonly write: string;
  readonly severity?: 'error' | 'warning';
}

/** The text of a scenario file, which knows its lines. */
export class SourceText {
  readonly fileName: string;
  readonly text: string;
  readonly lineCounter = new LineCounter();

  constructor(fileName: string, text: string) {
    this.fileName = fileName;
    this.text = text;
    this.lineCounter.addNewLine(0);
    for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) {
      this.lineCounter.addNewLine(at + 1);
    }
  }

  /** @returns line and column, both counted from 1 */
  placeOf(offset: number): { line: number; column: number } {
    const { line, col } = this.lineCounter.linePos(Math.max(0, Math.min(offset, this.text.length)));
    return { line: Math.max(1, line), column: Math.max(1, col) };
  }

  lineText(line: number): string {
    const start = this.lineCounter.lineStarts[line - 1] ?? 0;
    const end = this.text.indexOf('\n', start);
    return this.text.slice(start, end < 0 ? undefined : end).replace(/\r$/, '');
  }

  problem(span: SourceSpan, detail: ProblemDetail): Problem {
    const { line, column } = this.placeOf(span.start);
    const sourceLine = this.lineText(line);
    const length = Math.max(1, Math.min(span.end - span.start, sourceLine.length - column + 1));
    return {
      severity: detail.severity ?? 'error',
      file: this.fileName,
      line,
      column,
      length,
      sourceLine,
      message: detail.message,
      found: detail.found ?? '',
      expected: detail.expected,
      write: detail.write.trim() === '' ? detail.expected : detail.write,
    };
  }
}
