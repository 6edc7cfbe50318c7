import { expect, test } from 'vitest';
import { acceptanceBand } from '../acceptance.ts';
import { linesOf } from '../record.ts';
import { recordText, testRecord } from '../replay.ts';
import type { Suite } from '../suite.ts';

/** The record of promises: it keeps its bounds, and promises that are made too early or too late would be noticed. */
export function testPromise(suite: Suite): void {
  testRecord(suite);

  test('These bounds are those that chance allows 500 labs whose promises are kept with 80 %.', () => {
    expect(acceptanceBand(suite.repetitions, 0.8)).toEqual({ fewest: 370, most: 428 });
  });

  test.each([
    ['a tenth earlier', 0.9, 'too seldom'],
    ['a fifth later', 1.2, 'too often'],
  ])('Promises made %s would be noticed.', (_, factor, outcome) => {
    const kept = linesOf(suite, recordText(suite)).filter((line) => {
      const [, promised, , happened] = line.split(',').map(Number);
      return happened !== undefined && promised !== undefined && happened <= factor * promised;
    }).length;
    expect(kept < 370 ? 'too seldom' : kept > 428 ? 'too often' : 'unnoticed').toBe(outcome);
  });
}
