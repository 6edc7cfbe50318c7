import { readFileSync } from 'node:fs';
import { readScenario } from '@buildweek/scenario';
import { describe, expect, it } from 'vitest';
import { readPins } from './pins.ts';

const SMALL = readFileSync(new URL('../../../../scenarios/small.yaml', import.meta.url), 'utf8');
const AT_THE_START = `
at the start:
  jobs:
    - { demand: bracket, pieces: 4, stage: print }
    - { name: R-2, demand: bracket, pieces: 2, stage: print }
    - { demand: bracket, pieces: 1, stage: remove supports }
    - { demand: bracket, pieces: 1, stage: print, in: printer 2 }
  machines: { printer 2: { busy until: 2024-01-01 09:00 } }
`;

function lab() {
  const reading = readScenario(
    `${SMALL.replace('simulate:', 'starts: 2024-01-01\nsimulate:')}${AT_THE_START}`,
    'lab.yaml',
  );
  if (reading.kind !== 'scenario') throw new Error(reading.problems.map(({ message }) => message).join('\n'));
  return reading.lab;
}

describe('Builds that are decided on', () => {
  it('have a machine, jobs by their numbers and a time of today, or of another day', () => {
    expect(readPins(lab(), ['printer 1: job 1, job 2 at 15:30'])).toEqual([
      { machine: 'printer 1', jobs: [0, 1], fromHour: 15.5 },
    ]);
    expect(readPins(lab(), ['printer 3: R-2 at 2024-01-02 08:00'])).toEqual([
      { machine: 'printer 3', jobs: [1], fromHour: 32 },
    ]);
  });

  it.each([
    [['printer 9: job 1 at 12:00'], 'There is no machine "printer 9"'],
    [['printer 1'], 'This is no build to decide on'],
    [['printer 1: job 7 at 12:00'], 'There is no job "job 7" in the lab'],
    [['printer 1: job 1, job 1 at 12:00'], 'A job stands in it twice'],
    [['printer 1: job 1 at 25:00'], 'is no time'],
    [['printer 1: job 1 at 2023-12-31 12:00'], 'This time is over'],
    [['printer 1: job 3 at 12:00'], 'job 3 is built already'],
    [['printer 1: job 4 at 12:00'], 'job 4 is built already'],
    [['printer 1: job 1 at 12:00', 'printer 1: job 2 at 13:00'], '"printer 1" is decided on twice'],
    [['printer 1: job 1 at 12:00', 'printer 3: job 1 at 13:00'], 'job 1 is decided on twice'],
  ])('refuse %j', (pins, message) => {
    expect(() => readPins(lab(), pins)).toThrow(message);
    expect(() => readPins(lab(), pins)).toThrow('write:');
  });
});
