import { describe, expect, it } from 'vitest';
import { expectOneProblem } from './fixture/mistake.ts';
import { edited } from './fixture/plain-lab.ts';
import { readScenario } from './read-scenario.ts';

const DEMAND = 'demand:\n';

function variationsOf(section: string): unknown {
  const reading = readScenario(edited(DEMAND, `${section}${DEMAND}`), 'lab.yaml');
  return reading.kind === 'scenario' ? reading.variations : reading.problems;
}

describe('what may vary', () => {
  it('is a number of machines, stations, people or carriers', () => {
    const section =
      'may vary:\n  resin: 1 to 4\n  washer: 1 to 2\n  people / technicians: 0 to 3\n  carriers / tanks / count: 2 to 5\n';
    expect(variationsOf(section)).toEqual([
      { kind: 'count', of: 'machines', group: 'resin', from: 1, to: 4 },
      { kind: 'count', of: 'stations', group: 'washer', from: 1, to: 2 },
      { kind: 'count', of: 'people', group: 'technicians', from: 0, to: 3 },
      { kind: 'count', of: 'carriers', group: 'tanks', from: 2, to: 5 },
    ]);
  });

  it('begins with a name that is there once, or at the top of the file', () => {
    expect(variationsOf('may vary: { technicians / hours: day or always }\n')).toEqual(
      variationsOf('may vary: { people / technicians / hours: day or always }\n'),
    );
  });

  it('is any value in other words', () => {
    expect(variationsOf('may vary: { people / technicians / hours: day or always }\n')).toEqual([
      { kind: 'wording', path: ['people', 'technicians', 'hours'], options: ['day', 'always'] },
    ]);
  });

  it.each([
    [
      'may vary: { resins: 1 to 4 }\n',
      21,
      'resins',
      'There are no machines, stations, people or carriers called "resins".',
      'resin',
    ],
    [
      'may vary: { resin: 3 to 4 }\n',
      21,
      '3 to 4',
      'The scenario has 2 of "resin", which is not in the range.',
      '2 to 4',
    ],
    ['may vary: { resin: 4 to 1 }\n', 21, '4 to 1', 'The low end (4) is above the high end (1).', '1 to 4'],
    ['may vary: { resin 1 to 4 }\n', 21, 'resin 1 to 4', '"resin 1 to 4" is empty.', 'resin: 1 to 4'],
    ['may vary: { resin: many }\n', 21, 'many', '"many" leaves no choice.', 'for example: 1 to 4'],
    [
      'may vary: { people / technicians / hours: always or late }\n',
      21,
      'always',
      'The present value, "day", is not among the options.',
      'day or always or late',
    ],
    [
      'may vary: { people / technicians: day or late }\n',
      21,
      'people',
      '"people / technicians" is a group of keys; only a single value can be worded otherwise.',
      'people / technicians / hours: day or evening',
    ],
    [
      'may vary: { resin: 1 to 200, washer: 1 to 200 }\n',
      21,
      'resin',
      'These choices make 40000 plans.',
      'narrower ranges, or fewer of them',
    ],
  ])('with a mistake gets one message: %s', (section, line, at, message, write) => {
    expectOneProblem([DEMAND, `${section}${DEMAND}`, line, at, message, write]);
  });
});
