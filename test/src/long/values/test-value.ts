import { expect, test } from 'vitest';
import { acceptanceBand } from '../acceptance.ts';
import { linesOf } from '../record.ts';
import { recordText, testRecord } from '../replay.ts';
import type { Suite } from '../suite.ts';
import { LEVEL } from './value-suite.ts';

/**
 * How often the recorded intervals hold a value, for their level.
 *
 * @param factor by which each is made wider
 */
export function heldBy(suite: Suite, sought: number, factor = 1): 'too seldom' | 'as stated' | 'too often' {
  const lines = linesOf(suite, recordText(suite));
  const held = lines.filter((line) => {
    const [value = 0, low = 0, high = 0] = line.split(',').slice(1, 4).map(Number);
    return Math.abs(value - sought) <= (factor * (high - low)) / 2;
  }).length;
  const { fewest, most } = acceptanceBand(lines.length, LEVEL);
  if (held < fewest) return 'too seldom';
  return held > most ? 'too often' : 'as stated';
}

/** The tests of a suite of one interval. */
export function testValue(suite: Suite, truth: number): void {
  testRecord(suite);

  // Of normal estimates they would cover 0.883 and 0.989 of the time.
  test('Intervals a fifth narrower or three tenths wider than these would be noticed.', () => {
    expect(heldBy(suite, truth, 0.8)).toBe('too seldom');
    expect(heldBy(suite, truth)).toBe('as stated');
    expect(heldBy(suite, truth, 1.3)).toBe('too often');
  });
}
