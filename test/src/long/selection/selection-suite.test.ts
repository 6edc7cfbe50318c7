import { expect, test } from 'vitest';
import { mostWrong, type Pick, selectionSuite } from './selection-suite.ts';

const picks: Pick[] = [
  { chosen: 2, replications: [10, 30, 20, 0, 0, 0] },
  { chosen: 1, replications: [10, 20, 0, 0, 0, 0] },
  { chosen: null, replications: [10, 10, 10, 10, 10, 10] },
];
const suite = selectionSuite({
  name: 'made up',
  title: 'made up',
  repetitions: 3,
  played: [],
  createProcedure: () => {
    const left = [...picks];
    return async () => left.shift() as Pick;
  },
});
const lines = [
  'made up 0,4+5,yes,10,30,20,0,0,0',
  'made up 1,5+4,no,10,20,0,0,0,0',
  'made up 2,none,no,10,10,10,10,10,10',
];

// Source: the binomial distribution at 99.9 % (recomputed).
test.each([
  [1000, 73],
  [200, 21],
])('Of %i picks at most %i may be wrong.', (repetitions, most) => {
  expect(mostWrong(repetitions)).toBe(most);
});

test('A pick is written as the name of its plan, with the replications of all plans.', async () => {
  const player = suite.createPlayer();
  for (const [repetition, line] of lines.entries()) {
    expect(await player.play(repetition)).toBe(line);
    expect(() => suite.check(line, repetition)).not.toThrow();
  }
});

test('Wrong picks and none at all are counted, and too many are noticed.', () => {
  expect(suite.verdicts(lines)[0]?.words).toBe(
    'another plan than the right one in 2 of 3 uses; at most 2 are accepted; 50.0 replications each',
  );
  const of = (wrong: number) =>
    suite.verdicts(Array.from({ length: 1000 }, (_, use) => lines[use < wrong ? 1 : 0] ?? ''))[0]?.isWithin;
  expect([of(73), of(74)]).toEqual([true, false]);
});

test.each([
  'made up 1,4+5,yes,10,30,20,0,0,0',
  'made up 0,5+4,yes,10,30,20,0,0,0',
  'made up 0,4+5,no,10,30,20,0,0,0',
  'made up 0,4+5,yes,10,30,0,0,0,0',
  'made up 0,4+5,yes,10,30,20,0,0',
  'made up 0,4+5,yes,10,30,20.5,0,0,0',
  'made up 0,none,yes,10,30,20,0,0,0',
])('A line that contradicts itself or is of another use is refused: %s', (line) => {
  expect(() => suite.check(line, 0)).toThrow('npm run test:long');
});
