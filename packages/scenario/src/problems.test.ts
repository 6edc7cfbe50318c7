import { describe, expect, it } from 'vitest';
import { edited, PLAIN_LAB, problemsOf } from './fixture/plain-lab.ts';
import { QUEUES } from './fixture/queues.ts';

/** What is changed in the plain lab, and what is then said: line, word that is pointed at, message, what to write. */
type Case = readonly [from: string, to: string, line: number, at: string, message: string, write: string];

const VALUES: readonly Case[] = [
  ['starts: 2027-03-01', 'starts: 2027-03-03', 3, '2027-03-03', '2027-03-03 is a Wednesday.', '2027-03-01'],
  [
    'starts: 2027-03-01',
    'starts: 2027-02-30',
    3,
    '2027-02-30',
    'The date 2027-02-30 does not exist.',
    '2027-02-28',
  ],
  [
    'starts: 2027-03-01',
    'zone: Europe/Lisbonn',
    3,
    'Europe/Lisbonn',
    'There is no time zone called "Europe/Lisbonn".',
    'Europe/Lisbon',
  ],
  [
    '12:30-16:30',
    '11:30-16:30',
    5,
    '08:00',
    'The window Monday 11:30-16:30 overlaps Monday 08:00-12:00.',
    '08:00-16:30',
  ],
  [
    '08:00-12:00 ',
    '12:00-08:00 ',
    5,
    '12:00',
    'The window 12:00-08:00 runs backwards (past midnight it would be 20 hours long).',
    '08:00-12:00 12:30-16:30',
  ],
  ['mon-fri', 'mon-fry', 5, 'mon-fry', '"fry" is not a day of the week.', 'mon-fri'],
  [
    'hours:\n',
    'hours:\n  closed: [2027-04-31]\n',
    5,
    '2027-04-31',
    'The date 2027-04-31 does not exist.',
    '2027-04-30',
  ],
  [
    'hours:\n',
    'hours:\n  always: { mon: 08:00-12:00 }\n',
    5,
    'always',
    '"always" is day and night and need not be described.',
    'day',
  ],
  [
    'hours:\n',
    'hours:\n  night: {}\n',
    5,
    '{}',
    'The hours "night" have no windows.',
    '{ mon-fri: 07:00-11:30 12:00-15:30 }',
  ],
  [
    'hours:\n',
    'hours:\n  night: sometimes\n',
    5,
    'sometimes',
    '"sometimes" names no days.',
    '{ mon-fri: 07:00-11:30 12:00-15:30 }',
  ],
  ['count: 2, hours', 'count: 0, hours', 7, '0, hours', '"0" is not a whole number from 1 up.', '2'],
  ['hours: day, skills', 'hours: dya, skills', 7, 'dya', 'There are no hours called "dya".', 'day'],
  [
    'hours: day, skills',
    'other duties: 130 %, skills',
    7,
    '130 %',
    '130 % is more than there can be.',
    '99 %',
  ],
  [
    'small mask VPP',
    'small mask VP',
    9,
    'small mask VP',
    '"small mask VP" is not possible here.',
    'small mask VPP',
  ],
  ['start: when full or after 4 h', 'process: VP', 9, 'VP, carrier', '"VP" is not possible here.', 'VPP'],
  [
    'start: when full or',
    'start: when 150 % full or',
    9,
    'when 150',
    '150 % is more than there can be.',
    'when 100 % full or after 4 h',
  ],
  ['start: when full or after 4 h', 'set-up: 20', 9, '20, carrier', '"20" has no unit.', '20 min'],
  [
    'start: when full or after 4 h',
    'warm-up: 1,5 h',
    9,
    '1,5 h',
    '"1,5" has a comma inside a number.',
    '1.5 h',
  ],
  [
    'start: when full or after 4 h',
    'set-up: { by: hand work, takes: 2 mm }',
    9,
    '2 mm',
    '"mm" measures a length, and a time is needed here.',
    '2 min',
  ],
  [
    'start: when full or after 4 h',
    'cool-down: { takes: 2 h, where: outsid }',
    9,
    'outsid',
    '"outsid" is not possible here.',
    'outside',
  ],
  [
    'class: small mask VPP, ',
    'cool-down: { where: outside }, ',
    9,
    'cool-down',
    '"takes" is missing in "cool-down".',
    'takes: 4 h',
  ],
  [
    'class: small mask VPP, ',
    'material change: 10 min, ',
    9,
    'material change',
    'An attended material change makes the set-up longer, and there is no set-up.',
    'set-up: 10 min, or: material change: { takes: 10 min, attended: no }',
  ],
  ['carrier: tanks', 'carrier: tancs', 9, 'tancs', 'There is no carrier called "tancs".', 'tanks'],
  [
    'carriers: { tanks: 3 }',
    'carriers: { tanks: 0 }',
    10,
    '0 }',
    '"0" is not a whole number from 1 up.',
    '4',
  ],
  [
    'holds: 2 builds',
    'holds: 2 boxes',
    12,
    '2 boxes',
    'A station holds parts, jobs or builds, not "boxes".',
    '20 parts',
  ],
  [
    'takes: 12 min per batch',
    'takes: 12 min per lot',
    12,
    '12 min per lot',
    'A time "per lot" is not possible here.',
    '12 min per batch',
  ],
  [
    'takes: 12 min per batch',
    'takes: 12 min per batch, start: before closing',
    12,
    'before closing',
    'A station starts by what is waiting, not by the clock of the day or by promises.',
    'when 50 % full or after 1 h',
  ],
  ['on: resin', 'on: resn', 15, 'resn', 'There is no machine or station called "resn".', 'resin'],
  [
    '{ wait: 30 min }',
    '{ wait: 30 min, by: hand work }',
    17,
    'by',
    '"by" has no meaning here: a wait needs nothing and nobody.',
    'the wait alone, and the rest as a stage of its own',
  ],
  ['{ wait: 30 min }', '{ takes: 30 min }', 17, 'dry', '"by" is missing in "dry".', 'by: hand work'],
  [
    '{ wait: 30 min }',
    '{ by: hand work }',
    17,
    'dry',
    '"takes" is missing in "dry".',
    'takes: 20 min per job',
  ],
  [
    '{ wait: 30 min }',
    '{ by: hand work, takes: 3 min, load: 2 min }',
    17,
    'load',
    '"load" has no meaning here: it belongs to a station, named by "on".',
    'on: the station',
  ],
  [
    '    - dry:',
    '    - wash:',
    17,
    'wash',
    'The route "resin part" has two stages called "wash".',
    'wash again',
  ],
  [
    'takes: 5 min per part',
    'takes: 9 to 5 min per part, usually 7',
    18,
    '9 to 5',
    'The low end (9) is above the high end (5 min).',
    '5 min to 9 per part, usually 7',
  ],
  [
    'takes: 5 min per part',
    'takes: 5 to 9 min per part, usually 2',
    18,
    '5 to 9',
    'The usual value (2) lies outside 5 to 9 min.',
    '5 to 9 min per part, usually 5',
  ],
  ['may pause: yes', 'may pause: maybe', 18, 'maybe', '"maybe" is neither yes nor no.', 'no'],
  [
    'route: resin part',
    'route: resin prat',
    20,
    'resin prat',
    'There is no route called "resin prat".',
    'resin part',
  ],
  ['route: resin part, ', '', 20, 'ring', '"route" is missing in "ring".', 'route: …'],
  [
    'fits: 8 per build',
    'fits: 0.5 per build',
    20,
    '0.5 per build',
    'A part that does not fit into a build cannot be made.',
    '1 per build',
  ],
  [
    'fits: 8 per build',
    'space: 130 % of a build',
    20,
    '130 %',
    'The part takes more than a whole build: it fits no machine.',
    '100 % of a build',
  ],
  [
    'fits: 8 per build, ',
    'fits: 8 per build, space: 3 %, ',
    20,
    'space',
    '"space" has no meaning here: "fits" says the same.',
    'one of the two',
  ],
  [
    'fits: 8 per build, ',
    '',
    20,
    'ring',
    'How many of "ring" fit into a build on "resin" is missing.',
    'fits: 24 per build',
  ],
  [
    ', print: 3 h per build',
    '',
    20,
    'ring',
    '"ring" is built on "resin", but its print time is missing.',
    'print: 3 h per build',
  ],
  [
    'print: 3 h per build',
    'print: 3 h',
    20,
    '3 h',
    '"3 h" does not say whether it is for a whole build or for each part.',
    '3 h per build',
  ],
  [
    'print: 3 h per build',
    'print: 3 h per build, times: { snad: 3 min }',
    20,
    'snad',
    'There is no stage of this route called "snad".',
    'sand',
  ],
  [
    'print: 3 h per build',
    'print: 3 h per build, times: { dry: 3 min }',
    20,
    'dry',
    'The stage "dry" has no such time that a part could replace.',
    'the part without it',
  ],
  [
    'print: 3 h per build',
    'print: 3 h per build, times: { sand: 3 min per batch }',
    20,
    '3 min per batch',
    '"sand" is not done in batches.',
    '20 min per job',
  ],
  ['  ring: { jobs', '  rnig: { jobs', 22, 'rnig', 'There is no part called "rnig".', 'ring'],
  ['  ring: { jobs', '  rings: { part: rnig, jobs', 22, 'rnig', 'There is no part called "rnig".', 'ring'],
  ['jobs: 10 per week', 'jobs: 10', 22, '10, pieces', '"10" does not say how often.', '10 per week'],
  ['jobs: 10 per week, ', '', 22, 'ring', '"jobs" is missing in "ring".', 'jobs: 14 per week'],
  [
    'jobs: 10 per week',
    'jobs: 10 per week, every: 2 h',
    22,
    'every',
    '"every" has no meaning here: "jobs" says when jobs arrive.',
    'one of the two',
  ],
  ['jobs: 10 per week', 'every: 0 h', 22, '0 h', 'Arrivals without any time between them never end.', '2 h'],
  [
    'jobs: 10 per week',
    'every: 2 h, growth: 2 % per month',
    22,
    'growth',
    '"growth" has no meaning here: it belongs to "jobs", which says how many arrive at random moments.',
    'jobs: 14 per week',
  ],
  [
    'jobs: 10 per week',
    'dates: [2027-02-26 10:00]',
    22,
    '2027-02-26',
    'This lies before the start of the plan.',
    'a later date, or the job under "at the start"',
  ],
  [
    'jobs: 10 per week',
    'dates: [2027-03-01]',
    22,
    '2027-03-01',
    '"2027-03-01" is not a date with a time.',
    '2027-03-01 09:00',
  ],
  ['jobs: 10 per week', 'jobs: 10 per week, when: dya', 22, 'dya', 'There are no hours called "dya".', 'day'],
  [
    'jobs: 10 per week',
    'jobs: 10 per week, when: { mon 08:00-12:00: 1, mon-tue 11:00-13:00: 2 }',
    22,
    'mon-tue',
    '"mon-tue 11:00-13:00" overlaps "mon 08:00-12:00".',
    'mon-fri 08:00-12:00: 1',
  ],
  [
    'jobs: 10 per week',
    'jobs: 10 per week, when: { mon 08:00-12:00: much }',
    22,
    'mon 08:00',
    '"much" is not a weight.',
    '2',
  ],
  [
    'jobs: 10 per week',
    'jobs: 10 per week, when: { mon 08:00-12:00: 0 }',
    22,
    'when',
    'Every weight is zero: no job would ever arrive.',
    '1',
  ],
  ['pieces: 1 to 6', 'pieces: 6 to 1', 22, '6 to 1', 'The low end (6) is above the high end (1).', '1 to 6'],
  ['pieces: 1 to 6', 'pieces: 0', 22, '0, promise', '0 is not a whole number from 1 up.', '1 to 12'],
  ['pieces: 1 to 6', 'pieces: []', 22, '[]', 'There is no number in this list.', '[1, 2, 2, 5]'],
  ['promise: 3 working days', 'promise: 3', 22, '3 }', '"3" does not say of what.', '3 working days'],
  [
    'promise: 3 working days',
    'promise: 3 days, cut-off: 14:00',
    22,
    'cut-off',
    '"cut-off" has no meaning here: no promise counts working days.',
    'promise: 3 working days',
  ],
  ['promise: 3 working days', 'rush: 120 %', 22, '120 %', '120 % is more than there can be.', '100 %'],
  [
    'demand:\n',
    'dispatch: { order: [machines, benches] }\ndemand:\n',
    21,
    'machines',
    'Each of the three kinds of work has to be there once.',
    '[machines, stations, benches]',
  ],
  ['demand:\n', 'simulate: { weeks: 0 }\ndemand:\n', 21, '0 }', '"0" is not a whole number from 1 up.', '13'],
  [
    'demand:\n',
    'simulate: { precision: 5 % }\ndemand:\n',
    21,
    '5 %',
    '"5 %" does not say of which measure.',
    '5 % of p90 lead time',
  ],
  [
    'demand:\n',
    'simulate: { precision: 5 % of p99 lead time }\ndemand:\n',
    21,
    '5 %',
    '"p99 lead time" is not a measure that can be asked for.',
    '5 % of p90 lead time',
  ],
  [
    'demand:\n',
    'simulate: { at most: 100 }\ndemand:\n',
    21,
    'at most',
    '"at most" has no meaning here: it limits the search for a precision.',
    'precision: 5 % of p90 lead time',
  ],
  [
    'demand:\n',
    'simulate: { ignored weeks: some }\ndemand:\n',
    21,
    'some',
    '"some" is neither a number of weeks nor auto.',
    'auto',
  ],
  [
    'demand:\n',
    'simulate: { level: 20 % }\ndemand:\n',
    21,
    '20 %',
    'A confidence level of 20 % says next to nothing.',
    '95 %',
  ],
];

const LAB_CHECKS: readonly Case[] = [
  [
    'skills: [run machines, hand work]',
    'skills: [run machines, hand wrk]',
    18,
    'hand work',
    'Nobody can do the stage "sand": no group of people has the skill "hand work".',
    'hand wrk',
  ],
  [
    'takes: 5 min per part, may',
    'people: 3, takes: 5 min per part, may',
    18,
    'hand work',
    'The stage "sand" needs 3 people with the skill "hand work", and there are 2.',
    'people: 2, or more people with the skill',
  ],
  [
    'takes: 5 min per part, may pause: yes',
    'takes: 45 min per part',
    18,
    'sand',
    'The stage "sand" never fits into a shift: for 6 parts of "ring" at once it typically takes 4 h 30 min, and the longest stretch with somebody there is 4 h.',
    'may pause: yes',
  ],
  [
    'start: when full',
    'unload: 5 h, start: when full',
    9,
    'unload',
    'The unload of "resin" never fits into a shift: it typically takes 5 h, and the longest stretch with somebody there is 4 h.',
    'may pause: yes',
  ],
  [
    'start: when full',
    'set-up: 2 h, material change: 2.5 h, start: when full',
    9,
    'material change',
    'The set-up with a material change of "resin" never fits into a shift: it typically takes 4 h 30 min, and the longest stretch with somebody there is 4 h.',
    'may pause: yes',
  ],
  [
    'load: 3 min',
    'load: 5 h',
    16,
    'wash',
    'The loading of "wash" never fits into a shift: it typically takes 5 h, and the longest stretch with somebody there is 4 h.',
    'may pause: yes',
  ],
  [
    '    - dry: { wait: 30 min }',
    '    - dry: { wait: 30 min, level: build }\n    - move: { wait: 1 min }\n    - late: { wait: 1 min, level: build }',
    19,
    'build',
    '"late" takes whole builds, but does not come directly behind a build.',
    'level: job, or "level: build" at the stages before it',
  ],
  [
    'takes: 5 min per part, may',
    'takes: 5 min per build, may',
    18,
    '5 min per build',
    '"sand" takes whole builds, but does not come directly behind a build.',
    'a time per job or per part, or "level: build" at the stages before it',
  ],
  [
    '    - build: { on: resin }',
    '    - build: { on: resin }\n    - build again: { on: resin }',
    16,
    'resin',
    'The route "resin part" has a second build.',
    'a route and a part type for each build',
  ],
  [
    'empties carrier: yes',
    'level: job, empties carrier: yes',
    16,
    'empties carrier',
    'At "wash" there is no whole build on its carrier.',
    'level: build at this stage and at those before it, or the key at an earlier stage',
  ],
  [
    ', carrier: tanks',
    '',
    16,
    'empties carrier',
    'The builds of "resin" hold no carrier that could be emptied.',
    'carrier: … under machines / resin',
  ],
  [
    '{ on: resin }',
    '{ on: resin, takes: 3 h }',
    15,
    'takes',
    '"takes" has no meaning here: a build takes the times of its machine and the print time of its parts.',
    'under machines / resin',
  ],
  [
    '{ on: washer, ',
    '{ on: washer, may pause: yes, ',
    16,
    'may pause',
    '"may pause" has no meaning here: nobody stays while it runs.',
    'attended: yes, and by whom',
  ],
  [
    'takes: 12 min per batch, ',
    '',
    16,
    'wash',
    '"wash" does not say how long it runs, and "washer" does not either.',
    'takes: 20 min per batch',
  ],
  [
    'stations:\n',
    'stations:\n  resin: { takes: 3 min }\n',
    12,
    'resin',
    '"resin" is the name of machines and of stations.',
    'resin station',
  ],
  [
    'route: resin part, ',
    'route: bench, ',
    20,
    'fits',
    '"fits" has no meaning here: the route "bench" has no build.',
    'the part without it, or another route',
  ],
];

describe('a value that cannot be used is pointed at, with what to write instead:', () => {
  it.each(VALUES)('%s -> %s', (from, to, line, at, message, write) => {
    const text = edited(from, to);
    const problems = problemsOf(text);
    expect(problems.map((candidate) => candidate.message)).toEqual([message]);
    const [problem] = problems;
    expect(problem).toMatchObject({ severity: 'error', line, write });
    expect(problem?.sourceLine.slice((problem?.column ?? 0) - 1)).toMatch(new RegExp(`^${escaped(at)}`));
  });
});

describe('a lab that cannot work is found out before it is played:', () => {
  it.each(LAB_CHECKS)('%s -> %s', (from, to, line, at, message, write) => {
    const bench = to.includes('bench')
      ? 'routes:\n  bench: [sand: { by: hand work, takes: 5 min }]\n'
      : 'routes:\n';
    const text = edited(from, to).replace('routes:\n', bench);
    const shift = bench === 'routes:\n' ? 0 : 1;
    const problems = problemsOf(text);
    const problem = problems.find((candidate) => candidate.message === message);
    expect(problem, problems.map((candidate) => candidate.message).join('\n')).toMatchObject({
      severity: 'error',
      line: line + shift,
      write,
    });
    expect(problem?.sourceLine.slice((problem?.column ?? 0) - 1)).toMatch(new RegExp(`^${escaped(at)}`));
  });

  it('work that may not pause and fits for the largest job is accepted', () => {
    expect(problemsOf(edited(', may pause: yes', ', may pause: no'))).toEqual([]);
  });

  it('people who are never there together cannot do work for two', () => {
    const text = edited(
      'hours: day, skills: [run machines, hand work] }',
      'skills: [run machines] }\n  early: { hours: { mon: 06:00-08:00 }, skills: sanding }\n  late: { hours: { mon: 18:00-20:00 }, skills: sanding }',
    ).replace('by: hand work, takes', 'by: sanding, people: 2, takes');
    expect(problemsOf(text)).toMatchObject([
      {
        line: 20,
        message:
          'Nobody can do the stage "sand": 2 people with the skill "sanding" are never there together.',
      },
    ]);
  });

  it('a promise in working days needs hours', () => {
    const text = QUEUES['M/M/1'].replace('per hour', 'per hour, promise: 2 working days');
    expect(problemsOf(text)).toMatchObject([
      { line: 7, message: 'Working days are counted by hours, and the lab has none.' },
    ]);
  });

  it('all mistakes are told at once, in the order of the lines', () => {
    const text = PLAIN_LAB.replace('2027-03-01', '2027-03-02')
      .replace('on: resin', 'on: resn')
      .replace('5 min per part', '5 per part')
      .replace('10 per week', '10');
    expect(problemsOf(text).map((problem) => [problem.line, problem.write])).toEqual([
      [3, '2027-03-01'],
      [15, 'resin'],
      [18, '5 min per part'],
      [22, '10 per week'],
    ]);
  });
});

describe('a warning', () => {
  it.each([
    ['people:\n', '  night: { mon: 22:00-06:00 }\npeople:\n', 6, 'Nobody works the hours "night".'],
    ['stations:\n', 'stations:\n  oven: { takes: 1 h }\n', 12, 'No stage is done at "oven".'],
    ['machines:\n', 'machines:\n  spare: { class: small MEX }\n', 9, 'No part is built on "spare".'],
    ['tanks: 3', 'tanks: 3, trays: 2', 10, 'No machine uses "trays".'],
    [
      'routes:\n',
      'routes:\n  other: [sand: { by: hand work, takes: 1 h }]\n',
      14,
      'No part takes the route "other".',
    ],
    [
      'demand:\n',
      '  cap: { route: resin part, fits: 2 per build, print: 1 h per part }\ndemand:\n',
      21,
      'Nobody asks for "cap".',
    ],
    ['carrier: tanks', 'carrier: tanks, loaded: grye', 9, 'No part is made of "grye".'],
    [
      'promise: 3 working days',
      'promise: 3 working days, rush promise: 1 working day',
      22,
      '"ring" has a rush promise, but no rush jobs.',
    ],
  ])('is given for what has no effect: %s -> %s', (from, to, line, message) => {
    const problems = problemsOf(edited(from, to));
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({ severity: 'warning', line, message });
  });
});

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}
