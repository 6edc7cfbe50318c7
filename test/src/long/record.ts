import { createHash } from 'node:crypto';
import { HOW_TO_RECORD, type Suite } from './suite.ts';

/**
 * All outcomes of a suite as text: a digest over the suite and the outcomes, the names of the columns, and a line for
 * each repetition.
 */
export function recordOf(suite: Suite, lines: readonly string[]): string {
  const body = [suite.columns, ...lines, ''].join('\n');
  return `digest ${digestOf(suite, body)}\n${body}`;
}

/**
 * Reads what `recordOf` has written.
 *
 * @throws Error when the digest does not fit, repetitions are missing or in another order, or a line contradicts itself
 */
export function linesOf(suite: Suite, record: string): string[] {
  const [first = '', ...rest] = record.split('\n');
  const body = rest.join('\n');
  if (first !== `digest ${digestOf(suite, body)}`) {
    throw new Error(
      `The record of ${suite.name} was edited, or is of another version of the suite. ${HOW_TO_RECORD}`,
    );
  }
  const lines = rest.slice(1, -1);
  if (lines.length !== suite.repetitions) {
    throw new Error(`The record of ${suite.name} has ${lines.length} repetitions. ${HOW_TO_RECORD}`);
  }
  lines.forEach((line, repetition) => {
    suite.check(line, repetition);
  });
  return lines;
}

function digestOf({ played }: Suite, body: string): string {
  return createHash('sha256')
    .update(`${JSON.stringify(played)}\n${body}`)
    .digest('hex');
}
