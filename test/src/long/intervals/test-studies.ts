import { expect, test } from 'vitest';
import { linesOf } from '../record.ts';
import { recordText, testRecord } from '../replay.ts';
import { coverageOf } from './coverage.ts';
import { intervalSuite } from './interval-suite.ts';
import { outcomeOf, targetOf } from './outcome.ts';
import type { StudySuite } from './study-suite.ts';

/** The tests of a suite of studies. */
export function testStudies(study: StudySuite): void {
  const suite = intervalSuite(study);
  testRecord(suite);

  // Of normal estimates they would cover 0.883 and 0.989 of the time.
  test('Intervals a fifth narrower or three tenths wider than these would be noticed.', () => {
    const recorded = linesOf(suite, recordText(suite)).map(outcomeOf);
    for (const name of ['mean', 'p95'] as const) {
      for (const factor of [0.8, 1.3]) {
        const twins = recorded.map((outcome) => {
          const { low, high } = outcome[name];
          const half = (factor * (high - low)) / 2;
          const holds = Math.abs(targetOf(study, outcome, name) - (low + high) / 2) <= half;
          return { ...outcome, [name]: { low, high, holds } };
        });
        expect(coverageOf(twins).find((coverage) => coverage.name === name)?.isWithin).toBe(false);
      }
    }
  });
}
