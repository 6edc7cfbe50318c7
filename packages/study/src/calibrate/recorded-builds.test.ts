import { describe, expect, it } from 'vitest';
import type { BuildRow, RowMistake } from './build-row.ts';
import { recordedBuilds } from './recorded-builds.ts';

/** Rows `build part pieces hours`; the first is on line 2; - is an empty cell. */
function rows(...texts: string[]): BuildRow[] {
  return texts.map((text, index) => {
    const [build = '', part = '', pieces = '', hours = ''] = text
      .split(' ')
      .map((cell) => (cell === '-' ? '' : cell));
    return { line: index + 2, build, part, pieces, hours };
  });
}

const anyPart = (written: string): string => written;

function mistakesIn(...texts: string[]): (readonly [number, RowMistake['column'], string])[] {
  return recordedBuilds(rows(...texts), anyPart).mistakes.map(
    ({ line, column, message }) => [line, column, message] as const,
  );
}

describe('recordedBuilds', () => {
  it('puts the rows of a build together, wherever they stand and whichever of them says the hours', () => {
    const { builds, mistakes } = recordedBuilds(
      rows('a ring 3 -', 'b ring 1 2', 'a cap 4 5:30', 'b cap 2 2'),
      anyPart,
    );
    expect(mistakes).toEqual([]);
    expect(builds).toEqual([
      {
        name: 'a',
        line: 2,
        hours: 5.5,
        contents: new Map([
          ['ring', 3],
          ['cap', 4],
        ]),
      },
      {
        name: 'b',
        line: 3,
        hours: 2,
        contents: new Map([
          ['ring', 1],
          ['cap', 2],
        ]),
      },
    ]);
  });

  it('takes hours that are written in two ways and mean the same', () => {
    expect(mistakesIn('a ring 3 5.5', 'a cap 4 5:30')).toEqual([]);
  });

  it('finds every mistake, in the order of the lines', () => {
    expect(
      mistakesIn('a - 3 4', 'b ring 0 4', '- ring 1 4', 'c ring 2.5 0', 'd ring - 3000', 'e ring 1 -'),
    ).toEqual([
      [2, 'part', 'The part is missing.'],
      [3, 'pieces', '"0" is no number of pieces.'],
      [4, 'build', 'The name of the build is missing.'],
      [5, 'pieces', '"2.5" is no number of pieces.'],
      [5, 'hours', 'A print takes some time.'],
      [6, 'pieces', 'The number of pieces is missing.'],
      [6, 'hours', '3000 is longer than any print.'],
      [7, 'hours', 'Nothing says how long build e printed.'],
    ]);
  });

  it('finds a build that took different hours on two rows', () => {
    expect(mistakesIn('a ring 3 5', 'a cap 4 6')).toEqual([
      [3, 'hours', 'Build a took 5 on line 2, and 6 here.'],
    ]);
  });

  it('finds a part that is twice in a build, and says how many there are of it', () => {
    const { mistakes } = recordedBuilds(rows('a ring 3 5', 'a ring 4 -'), anyPart);
    expect(mistakes).toEqual([
      {
        line: 3,
        column: 'part',
        message: '"ring" is in build a already, on line 2.',
        found: 'ring',
        expected: 'one row for each part type of a build',
        write: 'one row with all pieces, 7; or another build',
      },
    ]);
  });

  it('does not ask for hours where they are there but wrong', () => {
    expect(mistakesIn('a ring 3 soon', 'a cap 4 -')).toEqual([[2, 'hours', '"soon" is no time.']]);
  });
});
