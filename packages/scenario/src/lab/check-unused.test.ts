import { describe, expect, it } from 'vitest';
import { edited, problemsOf } from '../fixture/plain-lab.ts';

const SKILLS = 'skills: [run machines, hand work] }';

describe('a skill that no work asks for', () => {
  it.each([
    ['run machine', 'run machines'],
    ['Run machines', 'run machines'],
    ['run  machines', 'run machines'],
    ['hand wrok', 'hand work'],
  ])('is warned of with the one that was probably meant: "%s"', (skill, meant) => {
    const text = edited(
      SKILLS,
      `${SKILLS}\n  student: { hours: day, skills: [hand work, run machines] }`,
    ).replace('[hand work, run machines]', `[hand work, "${skill}"]`);
    expect(problemsOf(text)).toMatchObject([
      {
        severity: 'warning',
        line: 8,
        column: 46,
        message: `Nobody needs the skill "${skill}"; did you mean "${meant}"?`,
        found: skill,
        write: meant,
      },
    ]);
  });

  it('is warned of at a single skill too', () => {
    const text = edited(SKILLS, `${SKILLS}\n  student: { hours: day, skills: run machine }`);
    expect(problemsOf(text)).toMatchObject([{ line: 8, column: 34, write: 'run machines' }]);
  });

  it('is warned of without a proposal when none is near', () => {
    const text = edited('hand work] }', 'hand work, glazing] }');
    expect(problemsOf(text)).toMatchObject([
      { severity: 'warning', message: 'Nobody needs the skill "glazing".', found: 'glazing' },
    ]);
  });

  it('is none when only a route that no part takes asks for it', () => {
    const text = edited('hand work] }', 'hand work, glazing] }').replace(
      'parts:',
      '  glazed part:\n    - glaze: { by: glazing, takes: 5 min }\nparts:',
    );
    expect(problemsOf(text).map(({ message }) => message)).toEqual([
      'No part takes the route "glazed part".',
    ]);
  });
});
