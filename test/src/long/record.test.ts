import { describe, expect, test } from 'vitest';
import { chosenRepetitions } from './chosen.ts';
import type { Outcome } from './outcome.ts';
import { Player } from './player.ts';
import { outcomesOf, recordOf } from './record.ts';
import { recordText } from './replay.ts';
import { MEAN_PRECISION } from './suites/mean-precision.ts';

const suite = MEAN_PRECISION;
const text = recordText(suite);
const outcomes = outcomesOf(suite, text);

/** The outcomes with one of them changed. */
function withOutcome(repetition: number, change: (outcome: Outcome) => Outcome): Outcome[] {
  return outcomes.map((outcome, position) => (position === repetition ? change(outcome) : outcome));
}

test('A record that is written again is the same text.', () => {
  expect(recordOf(suite, outcomes)).toBe(text);
});

describe('Editing a record by hand fails', () => {
  test('wherever one character of it is changed', () => {
    // A prime step meets every column, the names of the columns and the digest itself.
    for (let position = 0; position < text.length; position += 997) {
      const other = text[position] === '1' ? '2' : '1';
      expect(() => outcomesOf(suite, text.slice(0, position) + other + text.slice(position + 1))).toThrow(
        'npm run test:long',
      );
    }
  });

  test('when a line is taken out or two are exchanged', () => {
    const lines = text.split('\n');
    expect(() => outcomesOf(suite, lines.toSpliced(500, 1).join('\n'))).toThrow('was edited');
    const [first = '', second = ''] = lines.slice(500);
    expect(() => outcomesOf(suite, lines.toSpliced(500, 2, second, first).join('\n'))).toThrow('was edited');
  });

  test('when the digest is made to fit a miss that is called a hit', () => {
    const missed = outcomes.findIndex(({ mean }) => !mean.holds);
    const forged = withOutcome(missed, (outcome) => ({ ...outcome, mean: { ...outcome.mean, holds: true } }));
    expect(() => outcomesOf(suite, recordOf(suite, forged))).toThrow('contradicts itself');
  });

  test('when the digest is made to fit fewer repetitions, or the same one again', () => {
    expect(() => outcomesOf(suite, recordOf(suite, outcomes.slice(1)))).toThrow('has 999 repetitions');
    const repeated = withOutcome(3, () => outcomes[4] as Outcome);
    expect(() => outcomesOf(suite, recordOf(suite, repeated))).toThrow('in place of "mean-precision 3"');
  });

  test('when all fits together and the repetition is one that is played again', async () => {
    const [chosen = 0] = chosenRepetitions('any sources', suite.repetitions);
    const forged = withOutcome(chosen, (outcome) => ({
      ...outcome,
      mean: { low: outcome.mean.low - 0.01, high: outcome.mean.high + 0.01, holds: true },
    }));
    const recorded = outcomesOf(suite, recordOf(suite, forged))[chosen];
    const played = await new Player(suite).play(chosen);
    expect(played).toEqual(outcomes[chosen]);
    expect(played).not.toEqual(recorded);
  });
});

test('A record of another version of its suite is refused.', () => {
  const changed = { ...suite, scenario: suite.scenario.replace('weeks: 2', 'weeks: 3') };
  expect(() => outcomesOf(changed, text)).toThrow('is of another version of the suite');
});
