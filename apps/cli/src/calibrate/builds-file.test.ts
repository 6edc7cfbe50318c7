import { describe, expect, it } from 'vitest';
import { buildsFailure, readBuilds } from './builds-file.ts';

const ROWS = [
  { line: 2, build: '17', part: 'ring', pieces: '4', hours: '5,3' },
  { line: 3, build: '17', part: 'cap', pieces: '2', hours: '' },
];

function problemsIn(text: string): string[] {
  return readBuilds(text, 'builds.csv').problems.map(
    ({ line, column, message }) => `${line}:${column} ${message}`,
  );
}

describe('readBuilds', () => {
  it.each([
    ['semicolons', 'build;part;pieces;hours\n17;ring;4;5,3\n17;cap;2;\n'],
    ['tabs', 'build\tpart\tpieces\thours\n17\tring\t4\t5,3\n17\tcap\t2\t\n'],
    ['commas with quotes', 'build,part,pieces,hours\n17,ring,4,"5,3"\n17,cap,2,\n'],
    ['a byte order mark and other line ends', '\uFEFFbuild;part;pieces;hours\r\n17;ring;4;5,3\r\n17;cap;2;'],
    ['spaces and short rows', 'build ; part;pieces; hours\n 17 ;ring; 4;5,3\n17;cap;2\n'],
    ['other titles in another order', 'Qty;PRINT_TIME (h);Part name;Build No\n4;5,3;ring;17\n2;;cap;17\n'],
    ['separators behind every row', 'build;part;pieces;hours;\n17;ring;4;5,3;;;\n17;cap;2;;\n'],
  ])('reads a list with %s', (_, text) => {
    expect(readBuilds(text, 'builds.csv')).toMatchObject({ rows: ROWS, problems: [], unused: [] });
  });

  it('leaves out empty lines and lines that begin with #, and counts them', () => {
    const text = '# ours\n\nbuild;part;pieces;hours\n;;;\n  # resin\n17;ring;4;5\n';
    expect(readBuilds(text, 'builds.csv').rows.map(({ line }) => line)).toEqual([6]);
  });

  it('keeps a quotation mark that belongs to a name', () => {
    expect(readBuilds('build;part;pieces;hours\n1;5" plate;4;5\n', 'builds.csv').rows[0]?.part).toBe(
      '5" plate',
    );
  });

  it('names columns that it does not use', () => {
    expect(readBuilds('build;part;pieces;hours;operator\n1;ring;4;5;me\n', 'builds.csv').unused).toEqual([
      'operator',
    ]);
  });

  it('never takes minutes for hours', () => {
    expect(problemsIn('build;part;pieces;print time (min)\n1;ring;4;300\n')).toEqual([
      '1:1 The header line has no column "hours".',
    ]);
  });

  it('says which columns are missing or there twice', () => {
    expect(problemsIn('build;part;part name;hours\n1;ring;4;5\n')).toEqual([
      '1:12 The column "part" is there twice.',
      '1:1 The header line has no column "pieces".',
    ]);
  });

  it('finds rows with too many cells, as decimal commas between commas make them', () => {
    expect(problemsIn('build,part,pieces,hours\n1,ring,4,5,3\n2,ring,4,6\n')).toEqual([
      '2:12 This row has 5 cells, and the header line 4.',
    ]);
  });

  it('finds a quotation mark that is not closed', () => {
    expect(problemsIn('build;part;pieces;hours\n1;ring;4;5\n2;"ring;4;5\n3;ring;4;5\n')).toEqual([
      '3:1 A quotation mark is opened and not closed.',
    ]);
  });

  it.each(['', '\n\n', '# nothing yet\n'])('says that there is nothing in %j', (text) => {
    expect(problemsIn(text)).toEqual(['1:1 There is nothing in this list.']);
  });
});

describe('buildsFailure', () => {
  it('tells mistakes in the order of the lines, and lets none of them steer the terminal', () => {
    const file = readBuilds('build;part;pieces;hours\n1;\u001b[31mring;4;5\n', 'builds.csv');
    const said = { message: 'No.', found: '', expected: '', write: '' };
    const problems = [
      file.problemOf({ line: 2, column: 'part', ...said }),
      file.problemOf({ line: 1, column: 'build', ...said }),
    ];
    const text = buildsFailure(problems, 'builds.csv');
    expect(text.match(/builds\.csv:\d:\d/g)).toEqual(['builds.csv:1:1', 'builds.csv:2:3']);
    expect(text).not.toContain('\u001b');
    expect(text).toContain('There are 2 mistakes in builds.csv; nothing was done.');
  });
});
