import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, test } from 'vitest';
import { chosenRepetitions } from './chosen.ts';
import { coverageOf } from './coverage.ts';
import { type Outcome, targetOf } from './outcome.ts';
import { Player } from './player.ts';
import { HOW_TO_RECORD, outcomesOf } from './record.ts';
import { sourceHash } from './source-hash.ts';
import type { Suite } from './suite.ts';

/** Milliseconds: some seconds of work, more where other tests run beside it. */
const PATIENCE = 240_000;

const packages = fileURLToPath(new URL('../../../packages', import.meta.url));

/** The record of a suite as it stands in the repository. */
export function recordText({ name }: Suite): string {
  return readFileSync(new URL(`./record/${name}.csv`, import.meta.url), 'utf8');
}

/** The tests of a suite: a twentieth of its repetitions are played again, and the whole record keeps its bounds. */
export function testRecord(suite: Suite): void {
  describe(suite.title, () => {
    let recorded: Outcome[];

    beforeAll(() => {
      recorded = outcomesOf(suite, recordText(suite));
    });

    test(
      'A twentieth of the recorded repetitions, chosen by the hash of the sources, comes out the same when played again.',
      async () => {
        const chosen = chosenRepetitions(`${sourceHash(packages)} ${suite.name}`, suite.repetitions);
        const player = new Player(suite);
        for (const repetition of chosen) {
          expect(
            await player.play(repetition),
            `The sources do not play what was recorded. ${HOW_TO_RECORD}`,
          ).toEqual(recorded[repetition]);
        }
      },
      PATIENCE,
    );

    test('Of 1,000 intervals and predictions of level 95 % between 926 and 971 hold what they should.', () => {
      const outside = coverageOf(recorded).filter(({ isWithin }) => !isWithin);
      expect(outside.map(({ words }) => words)).toEqual([]);
    });

    // Of normal estimates they would cover 0.883 and 0.989 of the time.
    test('Intervals a fifth narrower or three tenths wider than these would be noticed.', () => {
      for (const name of ['mean', 'p95'] as const) {
        for (const factor of [0.8, 1.3]) {
          const twins = recorded.map((outcome) => {
            const { low, high } = outcome[name];
            const half = (factor * (high - low)) / 2;
            const holds = Math.abs(targetOf(suite, outcome, name) - (low + high) / 2) <= half;
            return { ...outcome, [name]: { low, high, holds } };
          });
          expect(coverageOf(twins).find((coverage) => coverage.name === name)?.isWithin).toBe(false);
        }
      }
    });
  });
}
