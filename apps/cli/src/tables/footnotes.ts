import { paragraph } from '../terminal/paragraph.ts';

/** Reasons why a number is not given, each told once below the table. */
export class Footnotes {
  private readonly reasons: string[] = [];

  /** What stands in the place of the number. */
  mark(reason: string): string {
    let position = this.reasons.indexOf(reason);
    if (position < 0) position = this.reasons.push(reason) - 1;
    return `not given [${position + 1}]`;
  }

  /** Lines for below the table; empty when every number was given. */
  text(): string {
    return this.reasons.map((reason, index) => paragraph(reason, `  [${index + 1}] `)).join('\n');
  }
}
