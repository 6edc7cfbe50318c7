import type { Target } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import { PLAIN_LAB, problemsOf } from './fixture/plain-lab.ts';
import { QUEUES } from './fixture/queues.ts';
import type { Problem } from './problem.ts';
import { readScenario } from './read-scenario.ts';

/** The plain lab, whose last line is number 22, with rush jobs and targets. */
const RUSH_LAB = PLAIN_LAB.replace('working days }', 'working days, rush: 20 % }');

function withTargets(lab: string, ...targets: readonly string[]): string {
  return `${lab}targets:\n${targets.map((text) => `  - ${text}\n`).join('')}`;
}

function targetOf(text: string): Target | undefined {
  const reading = readScenario(withTargets(RUSH_LAB, text), 'lab.yaml');
  if (reading.kind === 'problems') throw new Error(reading.problems.map((one) => one.message).join('\n'));
  return reading.targets[0];
}

/** The one problem of a target. */
function problemWith(lab: string, text: string): Problem | undefined {
  const problems = problemsOf(withTargets(lab, text));
  expect(problems.map((problem) => problem.message)).toHaveLength(1);
  return problems[0];
}

/** What is written in an error stands behind these words where it is no mended form of what was there. */
const proposed = (write: string): string => write.replace('for example: ', '');

describe('a target', () => {
  it.each([
    ['90 % of jobs within 2 days', { kind: 'clock', hours: 48 }],
    ['90 % of jobs within 30 h', { kind: 'clock', hours: 30 }],
    ['90 % of jobs within 1 h 30 min', { kind: 'clock', hours: 1.5 }],
    ['90 % of jobs within 1 week', { kind: 'clock', hours: 168 }],
    ['90 % of jobs within 2 working days', { kind: 'working days', days: 2, cutOffHour: null }],
  ])('takes days by the clock unless they are working days: %s', (text, within) => {
    expect(targetOf(text)).toMatchObject({ kind: 'share within', share: 0.9, within });
  });

  it('counts working days from the cut-off of the scenario, or from that of the jobs that it speaks of', () => {
    const deadlines = (cutOffs: (text: string) => string) => {
      const reading = readScenario(cutOffs(withTargets(RUSH_LAB, '90 % of rings within 5 working days')), '');
      return reading.kind === 'scenario' ? reading.lab.deadlines : reading.problems;
    };
    const common = (text: string): string => text.replace('people:', 'cut-off: 14:00\npeople:');
    expect(deadlines(common)).toEqual([{ kind: 'working days', days: 5, cutOffHour: 14 }]);
    const own = (text: string): string => common(text).replace('rush: 20 %', 'rush: 20 %, cut-off: 11:00');
    expect(deadlines(own)).toEqual([{ kind: 'working days', days: 5, cutOffHour: 11 }]);
  });

  it.each([
    ['p90 lead time of rings at most 5 days', '90 % of rings within 5 days'],
    ['p95 lead time at most 3 working days', '95 % of jobs within 3 working days'],
    ['p80 lead time of rush jobs at most 20 h', '80 % of rush jobs within 20 h'],
    ['P90 lead times of all jobs within 5 days', '90 % of all jobs within 5 days'],
  ])('on a percentile is one on the share of jobs within that time: %s', (one, other) => {
    const { wording: _, ...left } = targetOf(one) ?? { wording: '' };
    const { wording: __, ...right } = targetOf(other) ?? { wording: '' };
    expect(left).toEqual(right);
  });

  it.each([
    ['90 % of jobs within 2 days', { part: null, rush: null }],
    ['90 % of all jobs within 2 days', { part: null, rush: null }],
    ['90 % of rush jobs within 2 days', { part: null, rush: true }],
    ['90 % of normal jobs within 2 days', { part: null, rush: false }],
    ['90 % of ring within 2 days', { part: 'ring', rush: null }],
    ['90 % of Rings within 2 days', { part: 'ring', rush: null }],
    ['90 % of ring jobs within 2 days', { part: 'ring', rush: null }],
    ['90 % of rush rings within 2 days', { part: 'ring', rush: true }],
    ['on time at least 90 %', { part: null, rush: null }],
    ['jobs on time at least 90 %', { part: null, rush: null }],
    ['rush jobs on time at least 90 %', { part: null, rush: true }],
    ['rings on time at least 90 %', { part: 'ring', rush: null }],
  ])('says which jobs it speaks of: %s', (text, jobs) => {
    expect(targetOf(text)).toMatchObject({ share: 0.9, jobs });
  });

  it('finds a part by its plural, and a part that is called as the plural of another by its own name', () => {
    const lab = RUSH_LAB.replace(
      'parts:\n',
      'parts:\n  rings: { route: resin part, fits: 8 per build, print: 3 h per build }\n',
    ).replace('demand:\n', 'demand:\n  rings: { jobs: 1 per week }\n');
    const reading = readScenario(
      withTargets(lab, '90 % of rings within 2 days', '90 % of ring within 2 days'),
      '',
    );
    expect(reading.kind === 'scenario' ? reading.targets : reading.problems).toMatchObject([
      { jobs: { part: 'rings' } },
      { jobs: { part: 'ring' } },
    ]);
  });

  it.each([
    ['people busy at most 80 %', 'people', null],
    ['machines busy at most 80 %', 'machines', null],
    ['stations busy at most 80 %', 'stations', null],
    ['technicians busy at most 80 %', 'people', 'technicians'],
    ['technician busy at most 80 %', 'people', 'technicians'],
    ['resin busy at most 80 %', 'machines', 'resin'],
    ['washers busy at most 80 %', 'stations', 'washer'],
  ])('says whose hours it speaks of: %s', (text, of, group) => {
    expect(targetOf(text)).toMatchObject({ kind: 'busy', of, group, atMost: 0.8 });
  });

  it.each([
    ['on time at least 95 %', { kind: 'long run' }],
    ['on time at least 95 % in 90 % of quarters', { kind: 'chance of a period', chance: 0.9 }],
    ['on time at least 95 %, in 85 % of periods', { kind: 'chance of a period', chance: 0.85 }],
    [
      '90 % of jobs within 2 working days in 90 % of all quarters',
      { kind: 'chance of a period', chance: 0.9 },
    ],
  ])('holds in the long run, or in a share of periods: %s', (text, meaning) => {
    expect(targetOf(text)).toMatchObject({ meaning });
  });

  it('may stand alone, and is among the assumptions', () => {
    const reading = readScenario(`${RUSH_LAB}targets: on time at least 95 %\n`, 'lab.yaml');
    expect(reading).toMatchObject({ kind: 'scenario', targets: [{ kind: 'on time' }], warnings: [] });
    const said = (text: string) => {
      const found = readScenario(text, 'lab.yaml');
      const all = found.kind === 'scenario' ? found.assumptions : [];
      return all
        .filter(({ what }) => what.startsWith('targets'))
        .map(({ what, value, source, line }) => [what, value, source, line]);
    };
    expect(
      said(withTargets(RUSH_LAB, 'on time at least 95 %', 'people busy at most 80 % in 90 % of periods')),
    ).toEqual([
      ['targets / 1', 'on time at least 95 %', 'stated in the scenario', 24],
      ['targets / 1 / counts', 'all of it in the long run', 'default of the program', null],
      ['targets / 2', 'people busy at most 80 % in 90 % of periods', 'stated in the scenario', 25],
    ]);
  });
});

describe('a target that is wrong is told at its line, with what to write:', () => {
  it.each([
    // Measures that there are none of.
    [
      'throughput at least 5',
      'throughput',
      '"throughput at least 5" asks for nothing that is measured.',
      '90 % of rush jobs within 2 days',
    ],
    [
      'resin bussy at most 80 %',
      'resin',
      '"resin bussy at most 80 %" asks for nothing that is measured.',
      'resin busy at most 80 %',
    ],
    [
      '90 % of jobs in 2 days',
      '90',
      '"90 % of jobs in 2 days" asks for nothing that is measured.',
      '90 % of jobs within 2 days',
    ],
    ['on time > 95 %', 'on', '"on time > 95 %" asks for nothing that is measured.', 'on time at least 95 %'],
    [
      'mean lead time at most 3 days',
      'mean',
      '"mean lead time" is no percentile of lead times.',
      'p90 lead time at most 3 days',
    ],
    [
      'p100 lead time at most 3 days',
      'p100',
      '"p100 lead time" is no percentile of lead times.',
      'p90 lead time at most 3 days',
    ],
    // The wrong way round.
    [
      'people busy at least 80 %',
      'people',
      '"busy" is a share that is not to be passed: it takes "at most".',
      'people busy at most 80 %',
    ],
    [
      'on time at most 95 %',
      'on',
      '"on time" is a share that has to be reached: it takes "at least".',
      'on time at least 95 %',
    ],
    // Shares and times.
    ['110 % of jobs within 2 days', '110', '110 % is more than there can be.', '100 % of jobs within 2 days'],
    ['people busy at most 120 %', 'people', '120 % is more than there can be.', 'people busy at most 100 %'],
    ['on time at least 95', 'on', '"95" has no % behind it.', 'on time at least 95 %'],
    ['0 % of jobs within 2 days', '0', 'It cannot be zero.', '10 % of jobs within 2 days'],
    ['90 % of jobs within 2', '90', '"2" does not say of what.', '90 % of jobs within 2 days'],
    [
      '90 % of jobs within 2.5 working days',
      '90',
      '"2.5" is not a whole number of days.',
      '90 % of jobs within 3 working days',
    ],
    [
      '90 % of jobs within uniform 1 to 2 days',
      '90',
      'The time that a job may take is one time above zero.',
      '90 % of jobs within 2 days',
    ],
    // Periods.
    [
      'on time at least 95 % in 100 % of quarters',
      'on',
      'That every period without exception meets it can never be found out by playing some.',
      'on time at least 95 % in 95 % of quarters',
    ],
    [
      'on time at least 95 % in 90 % of weeks',
      'on',
      'A share of weeks has no meaning here.',
      'on time at least 95 % in 90 % of periods',
    ],
    // Names.
    [
      '90 % of rigns within 2 days',
      'rigns',
      'There is no part called "rigns".',
      '90 % of ring within 2 days',
    ],
    [
      '90 % of rush rigns within 2 days',
      'rigns',
      'There is no part called "rigns".',
      '90 % of rush ring within 2 days',
    ],
    [
      'resn busy at most 80 %',
      'resn',
      'There are no people, machines or stations called "resn".',
      'resin busy at most 80 %',
    ],
  ])('%s', (text, at, message, write) => {
    const problem = problemWith(RUSH_LAB, text);
    expect(problem).toMatchObject({ severity: 'error', line: 24, message });
    expect(problem?.sourceLine.slice((problem?.column ?? 0) - 1).startsWith(at)).toBe(true);
    expect(proposed(problem?.write ?? '')).toBe(write);
    // What is proposed is understood.
    expect(problemsOf(withTargets(RUSH_LAB, write))).toEqual([]);
  });

  it('rush jobs where nobody is in a hurry', () => {
    expect(problemWith(PLAIN_LAB, '90 % of rush jobs within 2 days')).toMatchObject({
      line: 24,
      column: 13,
      message: 'No job is a rush job.',
      write: 'rush: 10 % at the demand',
    });
    expect(problemWith(PLAIN_LAB, 'rush rings on time at least 95 %')?.message).toBe(
      'No job of "ring" is a rush job.',
    );
  });

  it('a part that nobody asks for', () => {
    const lab = RUSH_LAB.replace(
      'parts:\n',
      'parts:\n  cap: { route: resin part, fits: 8 per build, print: 3 h per build }\n',
    );
    expect(problemWith(lab, '90 % of caps within 2 days')).toMatchObject({
      line: 25,
      message: 'Nobody asks for "cap".',
      write: 'demand: { cap: { jobs: 14 per week } }',
    });
  });

  it('jobs on time to whom nothing is promised', () => {
    const lab = PLAIN_LAB.replace(', promise: 3 working days', '');
    expect(problemWith(lab, 'on time at least 95 %')).toMatchObject({
      line: 24,
      column: 5,
      message: 'Nothing is promised to these jobs: they cannot be on time or late.',
      write: 'promise: 3 working days at the demand',
    });
  });

  it('quarters where the run measures none', () => {
    const lab = RUSH_LAB.replace('hours:\n', 'simulate: { weeks: 6 }\nhours:\n');
    expect(problemWith(lab, 'on time at least 95 % in 90 % of quarters')).toMatchObject({
      line: 25,
      column: 38,
      message: 'The run measures 6 weeks, which is no quarter.',
      write: 'on time at least 95 % in 90 % of periods',
    });
    expect(problemsOf(withTargets(lab, 'on time at least 95 % in 90 % of periods'))).toEqual([]);
  });

  it('working days in a lab without hours', () => {
    expect(problemWith(QUEUES['M/M/1'], '90 % of customers within 2 working days')).toMatchObject({
      line: 9,
      message: 'Working days are counted by hours, and the lab has none.',
      write: '90 % of customers within 48 h',
    });
  });

  it('a name that people and machines share', () => {
    const lab = RUSH_LAB.replace('technicians: {', 'resin: {');
    expect(problemWith(lab, 'resin busy at most 80 %')).toMatchObject({
      line: 24,
      message: '"resin" is the name of people and of machines.',
    });
  });
});

/** The lab with all its prices. */
const PRICED_LAB = RUSH_LAB.replace('hours:\n', 'money: { currency: EUR }\nhours:\n')
  .replace('skills: [run', 'hourly cost: 41, skills: [run')
  .replace('carrier: tanks }', 'carrier: tanks, price: 3000 }')
  .replace('by: run machines }', 'by: run machines, price: 900 }')
  .replace('print: 3 h per build }', 'print: 3 h per build, material cost: 1.20 }');

describe('a target on money', () => {
  it.each([
    ['budget at most 40000', { kind: 'budget', of: 'purchases', atMost: 40000 }],
    ['budget at most 40000 EUR', { kind: 'budget', of: 'purchases', atMost: 40000 }],
    ['budget at most 250000 per year', { kind: 'budget', of: 'year', atMost: 250000 }],
    ['budget at most 20000 EUR per month', { kind: 'budget', of: 'year', atMost: 240000 }],
    ['cost per part at most 12', { kind: 'cost per part', atMost: 12 }],
    ['cost per part at most 12.50 EUR', { kind: 'cost per part', atMost: 12.5 }],
  ])('is on what is bought, on a year, or on each part: %s', (text, expected) => {
    const reading = readScenario(withTargets(PRICED_LAB, text), 'lab.yaml');
    expect(reading.kind === 'scenario' ? reading.targets : reading.problems).toEqual([
      { ...expected, wording: text },
    ]);
  });

  it.each([
    [
      'budget at most 40000 USD',
      'This is in USD, and line 4 says that money is in EUR.',
      'budget at most 40000 EUR',
    ],
    ['budget at least 40000', 'Nobody has to spend so much: it takes "at most".', 'budget at most 40000'],
    ['cost per part at most 0', 'It cannot be zero.', 'cost per part at most 12'],
    [
      'budget at most 40000 in 90 % of quarters',
      'A budget is known beforehand: it is kept in every period, or in none.',
      'budget at most 40000',
    ],
    [
      'cost per part at most 12 in 90 % of quarters',
      'The cost per part is that of all parts in the long run, not of each period.',
      'cost per part at most 12',
    ],
  ])('that is wrong is told: %s', (text, message, write) => {
    const problem = problemWith(PRICED_LAB, text);
    expect(problem).toMatchObject({ severity: 'error', line: 25, message });
    expect(proposed(problem?.write ?? '')).toBe(write);
  });

  it('is refused where nothing is said of what things cost', () => {
    const both = withTargets(RUSH_LAB, 'budget at most 40000', 'cost per part at most 12');
    expect(problemsOf(both)).toHaveLength(1);
    for (const text of ['budget at most 40000', 'cost per part at most 12']) {
      expect(problemWith(RUSH_LAB, text)).toMatchObject({
        severity: 'error',
        line: 24,
        message: 'This asks for money, and the scenario says nothing of what things cost.',
        write: 'money: { currency: EUR } at the start of a line',
      });
    }
  });

  it('gets a warning where another one asks for more', () => {
    const problems = problemsOf(withTargets(PRICED_LAB, 'budget at most 40000', 'budget at most 50000'));
    expect(problems).toMatchObject([{ severity: 'warning', line: 26 }]);
    expect(
      problemsOf(withTargets(PRICED_LAB, 'budget at most 40000', 'budget at most 50000 per year')),
    ).toEqual([]);
  });
});

describe('a target that follows from another one', () => {
  it.each([
    [['on time at least 95 %', 'on time at least 90 %'], 25],
    [['on time at least 90 %', 'on time at least 95 %'], 24],
    [['people busy at most 80 %', 'people busy at most 85 %'], 25],
    [['90 % of rings within 2 days', 'p90 lead time of ring at most 48 h'], 25],
  ])('gets a warning: %s', (targets, line) => {
    const problems = problemsOf(withTargets(RUSH_LAB, ...targets));
    expect(problems).toMatchObject([{ severity: 'warning', line }]);
    expect(problems[0]?.message).toContain('This says nothing that ');
  });

  it.each([
    [['on time at least 95 %', 'rush jobs on time at least 90 %']],
    [['90 % of jobs within 2 days', '95 % of jobs within 4 days']],
    [['on time at least 95 %', 'on time at least 90 % in 95 % of quarters']],
    [['people busy at most 80 %', 'machines busy at most 85 %']],
  ])('and none where it does not: %s', (targets) => {
    expect(problemsOf(withTargets(RUSH_LAB, ...targets))).toEqual([]);
  });
});
