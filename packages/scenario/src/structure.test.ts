import { describe, expect, it } from 'vitest';
import { edited, PLAIN_LAB, problemsOf } from './fixture/plain-lab.ts';
import { readScenario } from './read-scenario.ts';

describe('the plain lab of these tests', () => {
  it('has no problems', () => {
    expect(readScenario(PLAIN_LAB, 'lab.yaml')).toMatchObject({ kind: 'scenario', warnings: [] });
  });
});

describe('a key that is not known', () => {
  it.each([
    [
      '  technicians: {',
      '  technicians: { cout: 1, hours: day, skills: [x] }\n  others: {',
      7,
      18,
      'cout',
      'count',
    ],
    ['count: 2, hours: day', 'count: 2, shift: day', 7, 28, 'shift', 'hours'],
    ['start: when full', 'strat: when full', 9, 45, 'strat', 'start'],
    ['takes: 12 min', 'duration: 12 min', 12, 30, 'duration', 'takes'],
    ['{ on: washer', '{ machine: washer', 16, 15, 'machine', 'on'],
    ['print: 3 h', 'weight: 5 g, print: 3 h', 20, 49, 'weight', 'one of these keys, or delete the line'],
    ['fits: 8 per build, print: 3 h per build', 'stl: ring.stl', 20, 30, 'stl', 'mesh'],
    ['start: when full', 'build volume: 20 mm, start: when full', 9, 45, 'build volume', 'platform'],
    ['pieces: 1 to 6', 'quantity: 1 to 6', 22, 30, 'quantity', 'pieces'],
    ['demand:', 'demands:', 21, 1, 'demands', 'demand'],
  ])('instead of "%s" is pointed at, and the nearest is proposed', (from, to, line, column, found, write) => {
    const problems = problemsOf(edited(from, to));
    expect(problems[0]).toMatchObject({ line, column, found, write, severity: 'error' });
  });

  it('is not reported a second time as a key that is missing', () => {
    expect(problemsOf(edited('skills: [run', 'skils: [run')).map((problem) => problem.message)).toEqual([
      '"skils" is not known in "technicians".',
    ]);
    expect(
      problemsOf(edited('  ring: { route: resin part', '  ring: { rout: resin part')).map(
        (problem) => problem.message,
      ),
    ).toEqual(['"rout" is not known in "ring".']);
    expect(problemsOf(edited('machines:\n', 'machine:\n')).map((problem) => problem.message)).toEqual([
      '"machine" is not known here.',
    ]);
  });
});

describe('what has the wrong structure', () => {
  it.each([
    ['hours:\n  day: { mon-fri: 08:00-12:00 12:30-16:30 }\n', 'hours:\n', 4, 1, '"hours" is empty.'],
    ['  washer: { holds', '  dryer:\n  washer: { holds', 12, 3, '"dryer" is empty.'],
    ['carriers: { tanks: 3 }', 'carriers: [tanks]', 10, 12, 'This is a list, which does not fit here.'],
    [', pieces: 1 to 6', ', pieces: { low: 1 }', 22, 40, 'This is a group of keys, which does not fit here.'],
    ['hours: day, skills', 'hours: [day], skills', 7, 36, 'This is a list, which does not fit here.'],
    ['carriers: { tanks: 3 }', 'carriers: tanks', 10, 11, 'This is a single value, which does not fit here.'],
    [
      'takes: 12 min per batch',
      'takes: { a: 1 }',
      12,
      39,
      'This is a group of keys, which does not fit here.',
    ],
  ])('as in place of "%s" is named', (from, to, line, column, message) => {
    expect(problemsOf(edited(from, to))[0]).toMatchObject({ line, column, message });
  });

  it('among stages is often a line that is not indented far enough', () => {
    const text = edited(
      '    - sand: { by: hand work, takes: 5 min per part, may pause: yes }',
      '    - sand:\n      by: hand work\n      takes: 5 min per part',
    );
    expect(problemsOf(text)).toMatchObject([
      {
        line: 18,
        column: 7,
        message: 'The lines below "sand" are not indented far enough to belong to it.',
        write: '- sand: { by: hand work, takes: 20 min }',
      },
    ]);
    expect(problemsOf(edited('- dry: { wait: 30 min }', '- dry'))).toMatchObject([
      { line: 17, column: 7, message: 'Stage "dry" does not say what is done.' },
    ]);
  });
});

describe('a file that is no scenario', () => {
  it.each([
    ['', 1, 'This file says nothing.'],
    ['# only a comment\n', 1, 'This file says nothing.'],
    ['hello\n', 1, 'This is not a scenario.'],
    ['- a\n- b\n', 1, 'This is not a scenario.'],
  ])('such as "%s" is told what it starts with', (text, line, message) => {
    expect(problemsOf(text)).toMatchObject([{ line, column: 1, message, write: 'buildweek: 1' }]);
  });

  it('or of another version is told which version is read, and nothing else', () => {
    const problems = problemsOf(edited('buildweek: 1', 'buildweek: 2').replace('hours:', 'huors:'));
    expect(problems).toMatchObject([{ line: 1, column: 12, found: '2', write: 'buildweek: 1' }]);
  });

  it('because all is missing is told everything that is', () => {
    const problems = problemsOf('name: x\n');
    expect(problems.map((problem) => problem.write)).toEqual([
      'buildweek: 1',
      'routes: { plain: [ { sand: { by: hand work, takes: 20 min } } ] }',
      'parts: { housing: { route: plain } }',
      'demand: { housing: { jobs: 14 per week } }',
    ]);
  });

  it('because it is huge is refused', () => {
    expect(problemsOf(`# ${'x'.repeat(5_000_001)}`)).toMatchObject([
      { message: 'This file is too large to be a scenario.' },
    ]);
  });
});
