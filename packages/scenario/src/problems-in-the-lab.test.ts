import { describe, expect, it } from 'vitest';
import type { Mistake } from './fixture/mistake.ts';
import { edited, PLAIN_LAB, problemsOf } from './fixture/plain-lab.ts';
import { QUEUES } from './fixture/queues.ts';

const LAB_CHECKS: readonly Mistake[] = [
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
    expect(problem?.sourceLine.slice((problem?.column ?? 0) - 1).slice(0, at.length)).toBe(at);
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
      [3, 'for example: 2027-03-01'],
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
