import { describe, expect, it } from 'vitest';
import { edited } from './fixture/plain-lab.ts';
import { readScenario } from './read-scenario.ts';

const files: Readonly<Record<string, string>> = {
  'sanding.txt': '# minutes, from the log\n4\n6.5\n\n12\n',
  'wrong.txt': '4\n6,5\n',
  'empty.txt': '# nothing\n',
  'orders.csv': '2027-03-01 09:00, 4, rush\n2027-03-02 10:30, 2\n2027-03-04 08:00\n',
  'orders-wrong.csv': '2027-03-01 09:00, 4\n2027-03-32 10:00, 2\n',
};
const resolve = (path: string): string | null => files[path] ?? null;

describe('another file that a scenario names', () => {
  it('can hold measured times', () => {
    const text = edited('takes: 5 min per part', 'takes: measured from sanding.txt, min per part');
    const reading = readScenario(text, 'lab.yaml', resolve);
    if (reading.kind === 'problems') throw new Error(reading.problems[0]?.message);
    expect(reading.lab.parts[0]?.stages.at(-1)).toMatchObject({
      basis: 'part',
      work: { duration: { distribution: { kind: 'measured', values: [4 / 60, 6.5 / 60, 0.2] } } },
    });
  });

  it('can hold dates of jobs, in any order', () => {
    const reading = readScenario(edited('jobs: 10 per week', 'dates: from orders.csv'), 'lab.yaml', resolve);
    if (reading.kind === 'problems') throw new Error(reading.problems[0]?.message);
    expect(reading.lab.demand[0]?.arrivals).toEqual({
      kind: 'dated',
      jobs: [
        { atHour: 9, quantity: 4, rush: true },
        { atHour: 34.5, quantity: 2, rush: null },
        { atHour: 80, quantity: null, rush: null },
      ],
    });
  });

  it.each([
    [
      'takes: 5 min per part',
      'takes: measured from sandin.txt, min',
      18,
      'There is no file "sandin.txt" here.',
      'sandin.txt',
    ],
    [
      'takes: 5 min per part',
      'takes: measured from wrong.txt, min',
      18,
      'Line 2 of wrong.txt says "6,5", which is not a number.',
      '6.5',
    ],
    [
      'takes: 5 min per part',
      'takes: measured from empty.txt, min',
      18,
      'The file "empty.txt" is empty.',
      'empty.txt',
    ],
    [
      'jobs: 10 per week',
      'dates: from orders-wrong.csv',
      22,
      'Line 2 of orders-wrong.csv: The date 2027-03-32 does not exist.',
      '2027-03-31 10:00',
    ],
    ['jobs: 10 per week', 'dates: orders.csv', 22, '"orders.csv" is no list of dates.', 'from orders.csv'],
  ])('is reported where it is named: %s -> %s', (from, to, line, message, write) => {
    const reading = readScenario(edited(from, to), 'lab.yaml', resolve);
    expect(reading).toMatchObject({ kind: 'problems', problems: [{ line, message, write }] });
  });

  it('cannot be read where no files can', () => {
    const text = edited('takes: 5 min per part', 'takes: measured from sanding.txt, min');
    expect(readScenario(text, 'lab.yaml')).toMatchObject({
      problems: [{ message: 'There is no file "sanding.txt" here.' }],
    });
  });
});
