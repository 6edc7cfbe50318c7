import { describe, expect, test } from 'vitest';
import { chosenRepetitions } from './chosen.ts';
import { intervalSuite } from './intervals/interval-suite.ts';
import { lineOf, type Outcome, outcomeOf } from './intervals/outcome.ts';
import { StudyPlayer } from './intervals/player.ts';
import { linesOf, recordOf } from './record.ts';
import { recordText } from './replay.ts';
import { MEAN_PRECISION } from './suites/mean-precision.ts';

const suite = intervalSuite(MEAN_PRECISION);
const text = recordText(suite);
const lines = linesOf(suite, text);
const outcomes = lines.map(outcomeOf);

/** The outcomes with one of them changed. */
function withOutcome(repetition: number, change: (outcome: Outcome) => Outcome): string[] {
  return outcomes.map((outcome, position) => lineOf(position === repetition ? change(outcome) : outcome));
}

test('A record that is written again is the same text.', () => {
  expect(recordOf(suite, lines)).toBe(text);
});

describe('Editing a record by hand fails', () => {
  test('wherever one character of it is changed', () => {
    // A prime step meets every column, the names of the columns and the digest itself.
    for (let position = 0; position < text.length; position += 997) {
      const other = text[position] === '1' ? '2' : '1';
      expect(() => linesOf(suite, text.slice(0, position) + other + text.slice(position + 1))).toThrow(
        'npm run test:long',
      );
    }
  });

  test('when a line is taken out or two are exchanged', () => {
    const all = text.split('\n');
    expect(() => linesOf(suite, all.toSpliced(500, 1).join('\n'))).toThrow('was edited');
    const [first = '', second = ''] = all.slice(500);
    expect(() => linesOf(suite, all.toSpliced(500, 2, second, first).join('\n'))).toThrow('was edited');
  });

  test('when the digest is made to fit a miss that is called a hit', () => {
    const missed = outcomes.findIndex(({ mean }) => !mean.holds);
    const forged = withOutcome(missed, (outcome) => ({ ...outcome, mean: { ...outcome.mean, holds: true } }));
    expect(() => linesOf(suite, recordOf(suite, forged))).toThrow('contradicts itself');
  });

  test('when the digest is made to fit fewer repetitions, or the same one again', () => {
    expect(() => linesOf(suite, recordOf(suite, lines.slice(1)))).toThrow('has 999 repetitions');
    const repeated = withOutcome(3, () => outcomes[4] as Outcome);
    expect(() => linesOf(suite, recordOf(suite, repeated))).toThrow('in place of "mean-precision 3"');
  });

  test('when all fits together and the repetition is one that is played again', async () => {
    const [chosen = 0] = chosenRepetitions('any sources', suite.repetitions);
    const forged = withOutcome(chosen, (outcome) => ({
      ...outcome,
      mean: { low: outcome.mean.low - 0.01, high: outcome.mean.high + 0.01, holds: true },
    }));
    const recorded = linesOf(suite, recordOf(suite, forged))[chosen];
    const played = lineOf(await new StudyPlayer(MEAN_PRECISION).play(chosen));
    expect(played).toBe(lines[chosen]);
    expect(played).not.toBe(recorded);
  });
});

test('A record of another version of its suite is refused.', () => {
  const changed = intervalSuite({
    ...MEAN_PRECISION,
    scenario: MEAN_PRECISION.scenario.replace('weeks: 2', 'weeks: 3'),
  });
  expect(() => linesOf(changed, text)).toThrow('is of another version of the suite');
});
