import { describe, expect, it } from 'vitest';
import { edited, problemsOf } from '../fixture/plain-lab.ts';
import { editedShapes, problemsOfShaped } from '../fixture/shaped-lab.ts';

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

describe('what is said of shapes and has no effect', () => {
  it('is a finish where all stages are for every finish, and a build space that no shape needs', () => {
    const text = edited('{ route: resin part', '{ finish: smooth, route: resin part').replace(
      'class: small mask VPP',
      'class: small mask VPP, platform: 150 x 90 x 180 mm',
    );
    expect(problemsOf(text).map(({ severity, message }) => [severity, message])).toEqual([
      [
        'warning',
        'No part with a size or a mesh is built on "resin": what is said of its builds has no effect.',
      ],
      ['warning', 'All stages of "resin part" are for every finish: "smooth" makes no difference.'],
    ]);
  });

  it('is a stage for a finish that no part of the route has', () => {
    expect(problemsOfShaped(editedShapes(', finish: smooth }', ' }'))).toEqual([
      expect.objectContaining({
        severity: 'warning',
        found: 'for finish',
        message: 'No part asks for "sand": none of "filament part" is finished "smooth".',
        write: 'finish: smooth at a part',
      }),
    ]);
  });

  it('is a number of parts that a machine of shapes holds', () => {
    expect(problemsOfShaped(editedShapes('jobs per build: 1', 'holds: 24 parts'))).toEqual([
      expect.objectContaining({
        severity: 'warning',
        found: 'holds',
        message: 'What fits on "filament" follows from the sizes of its parts: "holds" has no effect.',
      }),
    ]);
  });
});
