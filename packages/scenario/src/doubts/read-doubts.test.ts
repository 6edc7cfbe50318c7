import { describe, expect, it } from 'vitest';
import { edited, problemsOf } from '../fixture/plain-lab.ts';
import { readScenario } from '../read-scenario.ts';

const AT = 'demand:\n';

/** The plain lab with one doubt. */
function doubting(line: string): string {
  return `${edited(AT, AT)}doubts:\n  ${line}\n`;
}

function doubtsOf(text: string) {
  const reading = readScenario(text, 'lab.yaml');
  if (reading.kind === 'problems') throw new Error(reading.problems.map(({ message }) => message).join('\n'));
  return reading.doubts;
}

describe('doubts', () => {
  it('are none where nothing is said', () => {
    expect(doubtsOf(edited(AT, AT))).toBeNull();
  });

  it.each([
    ['demand: 80 to 130 %', { kind: 'demand', of: null }, [0.8, 1, 1.3]],
    ['demand of ring: 60 % to 150 %', { kind: 'demand', of: 'ring' }, [0.6, 1, 1.5]],
    ['times of attended work: 90 to 140 %', { kind: 'work times', by: 'everything' }, [0.9, 1, 1.4]],
    ['times of hand work: 90 to 140 %', { kind: 'work times', by: 'skill', of: 'hand work' }, [0.9, 1, 1.4]],
    [
      'times of sand: 90 to 140 %, usually 120',
      { kind: 'work times', by: 'stage', of: 'sand' },
      [0.9, 1.2, 1.4],
    ],
    ['times of stage dry: 90 to 140 %', { kind: 'work times', by: 'stage', of: 'dry' }, [0.9, 1, 1.4]],
    ['print times of resin: 95 to 115 %', { kind: 'print times', of: 'resin' }, [0.95, 1, 1.15]],
    ['breakdowns of resin: 0 to 200 %', { kind: 'breakdowns', of: 'resin' }, [0, 1, 2]],
    ['failed builds: 50 to 200 %', { kind: 'failed builds', of: null }, [0.5, 1, 2]],
  ])('%s', (line, about, [low, typical, high]) => {
    expect(doubtsOf(doubting(line))).toEqual([{ name: line.split(':')[0], about, low, typical, high }]);
    expect(problemsOf(doubting(line))).toEqual([]);
  });

  it.each([
    ['demand: 130 to 80 %', 11, 'The low end (130 %) is above the high end (80 %).', '80 to 130 %'],
    ['demand: 80 to 130', 11, '"80 to 130" has no % behind it.', '80 to 130 %'],
    ['demand: 0.8 to 1.3', 11, '"0.8 to 1.3" has no % behind it.', 'for example: 80 to 130 %'],
    ['demand: 120 %', 11, '"120 %" is one value, and a doubt is a range.', '100 to 120 %'],
    [
      'demand: 90 to 110 %, usually 120',
      11,
      'The usual value (120 %) lies outside the range.',
      'for example: 90 to 120 %, usually 120',
    ],
    ['demand: 0 to 130 %', 11, 'At 0 % there would be no jobs at all.', '50 to 130 %'],
    ['times of sand: 0 to 130 %', 18, 'At 0 % there would be no time at all.', '50 to 130 %'],
    ['demand of rnig: 80 to 130 %', 3, 'There is nothing called "rnig" that has demand.', 'demand of ring'],
    ['demnd of ring: 80 to 130 %', 3, '"demnd of ring" is nothing that can be in doubt.', 'demand of ring'],
    [
      'times of polish: 80 to 130 %',
      3,
      'No skill and no stage with a time of its own is called "polish".',
      'times of attended work',
    ],
    [
      'times of build: 80 to 130 %',
      3,
      'No skill and no stage with a time of its own is called "build".',
      'times of attended work',
    ],
    ['times: 80 to 130 %', 3, 'It does not say the times of what.', 'times of attended work'],
    [
      'absence: 50 to 200 %',
      3,
      'There is nothing in this lab that "absence" would change.',
      'nothing: leave this line out',
    ],
  ])('%s is refused at its place', (line, column, message, write) => {
    const problems = problemsOf(doubting(line));
    expect(problems.map((problem) => problem.message)).toEqual([message]);
    expect(problems[0]).toMatchObject({ severity: 'error', line: 24, column, write });
  });

  it('a range without 100 % is a warning', () => {
    expect(problemsOf(doubting('demand: 110 to 130 %'))).toMatchObject([
      {
        severity: 'warning',
        line: 24,
        message: 'This range leaves out what the scenario itself says, 100 %.',
      },
    ]);
  });

  it('a share cannot become all of them', () => {
    const text = doubting('share of rush: 50 to 400 %').replace('promise:', 'rush: 30 %, promise:');
    expect(problemsOf(text)).toMatchObject([
      { message: 'At 400 % it would be 120 % of all.', write: '50 to 330 %' },
    ]);
  });

  it('work that may not pause has to fit into a shift at its high end', () => {
    const text = doubting('times of sand: 90 to 150 %').replace(
      'takes: 5 min per part, may pause: yes',
      'takes: 3 h per job',
    );
    expect(problemsOf(text)).toMatchObject([
      {
        message:
          'At 150 % the stage "sand" typically takes 4 h 30 min, and would fit into no shift: the longest stretch is 4 h.',
        write: '90 to 133 %',
      },
    ]);
  });

  it('dated jobs cannot be scaled', () => {
    const text = doubting('demand: 80 to 120 %').replace('jobs: 10 per week', 'dates: [2027-03-01 09:00]');
    expect(problemsOf(text)).toMatchObject([
      { message: 'Jobs on stated dates, or kept in the lab, cannot become more or fewer by a factor.' },
    ]);
  });
});
