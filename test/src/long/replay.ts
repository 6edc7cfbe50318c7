import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { chosenRepetitions } from './chosen.ts';
import { linesOf } from './record.ts';
import { sourceHash } from './source-hash.ts';
import { HOW_TO_RECORD, type Suite } from './suite.ts';

/** Milliseconds: some seconds of work, more where other tests run beside it. */
const PATIENCE = 240_000;

const packages = fileURLToPath(new URL('../../../packages', import.meta.url));

/** The record of a suite as it stands in the repository. */
export function recordText({ name }: Suite): string {
  return readFileSync(new URL(`./record/${name}.csv`, import.meta.url), 'utf8');
}

/** The tests of a suite: a twentieth of its repetitions are played again, and the whole record keeps its bounds. */
export function testRecord(suite: Suite): void {
  test(
    'A twentieth of the recorded repetitions, chosen by the hash of the sources, comes out the same when played again.',
    async () => {
      const recorded = linesOf(suite, recordText(suite));
      const player = suite.createPlayer();
      for (const repetition of chosenRepetitions(
        `${sourceHash(packages)} ${suite.name}`,
        suite.repetitions,
      )) {
        expect(
          await player.play(repetition),
          `The sources do not play what was recorded. ${HOW_TO_RECORD}`,
        ).toBe(recorded[repetition]);
      }
    },
    PATIENCE,
  );

  test('What was counted over all recorded repetitions lies within what chance allows.', () => {
    const verdicts = suite.verdicts(linesOf(suite, recordText(suite)));
    expect(verdicts.length).toBeGreaterThan(0);
    expect(verdicts.filter(({ isWithin }) => !isWithin).map(({ words }) => words)).toEqual([]);
  });
}
