import { expect, test } from 'vitest';
import { linesOf } from '../record.ts';
import { recordText, testRecord } from '../replay.ts';
import type { Suite } from '../suite.ts';
import type { KnownLaws } from './known-log.ts';
import { FIGURES, truthOf } from './learned-figures.ts';
import { acceptedOf, heldBy } from './recovery-suite.ts';

/** The tests of a suite that learns from logs. */
export function testRecovery(suite: Suite, laws: KnownLaws): void {
  testRecord(suite);

  test.each(FIGURES)('Limits that were a quarter closer would be noticed: %s.', (figure) => {
    const lines = linesOf(suite, recordText(suite));
    const truth = truthOf(laws, figure);
    const { fewest } = acceptedOf(figure, lines.length);
    expect(heldBy(lines, figure, truth, 0.75)).toBeLessThan(fewest);
    expect(heldBy(lines, figure, truth)).toBeGreaterThanOrEqual(fewest);
  });
}
