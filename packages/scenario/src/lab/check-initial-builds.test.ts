import { describe, expect, it } from 'vitest';
import { readScenario } from '../read-scenario.ts';

function scenario(lever: string, ring: string, part = 'fits: 6 per build, print: 1 h per build'): string {
  return `
buildweek: 1
starts: 2025-01-06
hours: { day: { mon-fri: 08:00-16:00 } }
people: { technicians: { hours: day, skills: [run machines] } }
machines: { printer: { class: small MEX, count: 2 } }
routes:
  printed: [build: { on: printer }]
parts:
  lever: { route: printed, ${part} }
  ring: { route: printed, fits: 3 per build, print: 1 h per build }
demand:
  lever: { jobs: 1 per week }
  ring: { jobs: 1 per week }
at the start:
  jobs:
    - { demand: lever, pieces: ${lever}, stage: build, in: printer 2 }
    - { demand: ring, pieces: ${ring}, stage: build, in: printer 2 }
  machines:
    printer 2: { busy until: 2025-01-06 10:00 }
`;
}

function problemsOf(text: string): readonly object[] {
  const reading = readScenario(text, 'start.yaml');
  return reading.kind === 'problems' ? reading.problems : reading.warnings;
}

describe('What a machine holds at the start', () => {
  it('may fill it', () => {
    expect(problemsOf(scenario('2', '2'))).toEqual([]);
    expect(problemsOf(scenario('4', '1'))).toEqual([]);
  });

  it('is refused when it does not fit, with what would', () => {
    expect(problemsOf(scenario('3', '2'))).toMatchObject([
      {
        severity: 'error',
        line: 20,
        column: 5,
        message: '"printer 2" holds 5 pieces at the start, more than fit in one build.',
        expected: 'at most 6 of "lever", or at most 3 of "ring"',
      },
    ]);
  });

  it('is not judged where shapes would have to be packed together', () => {
    const shaped = 'size: 100 x 100 x 20 mm, volume: 50 cm3';
    const both = scenario('3', '2', shaped).replace(
      'fits: 3 per build, print: 1 h per build',
      'size: 90 x 90 x 20 mm, volume: 50 cm3',
    );
    expect(problemsOf(both)).toEqual([]);
    const one = both.replace(/ {4}- \{ demand: ring.*\n/, '').replace('pieces: 3', 'pieces: 300');
    expect(problemsOf(one)).toMatchObject([{ message: expect.stringContaining('holds 300 pieces') }]);
  });
});
