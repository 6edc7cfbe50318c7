import { formatProblem, type Problem } from '@buildweek/scenario';
import { BUILD_COLUMNS, type BuildColumn, type BuildRow, type RowMistake } from '@buildweek/study';
import { CsvError, parse } from 'csv-parse/sync';
import { foundColumns } from './build-columns.ts';
import { cellPlace, type Separator, separatorOf } from './csv-line.ts';

/** Larger files are no list of builds that somebody has kept. */
const LONGEST_TEXT = 20_000_000;
const HEADER_EXAMPLE = 'build;part;pieces;hours';

/** A list of measured builds: its rows as they are written, and what is wrong with its lines. */
export interface BuildsFile {
  readonly rows: readonly BuildRow[];
  readonly problems: readonly Problem[];
  /** Titles of columns that are not used. */
  readonly unused: readonly string[];
  /** @returns where a mistake in one of the rows stands */
  problemOf(mistake: RowMistake): Problem;
}

interface WrittenRow {
  readonly line: number;
  readonly cells: readonly string[];
}

/**
 * Reads a list of measured builds: comma, semicolon or tab between its cells, a header line, empty lines and lines
 * that begin with # left out.
 *
 * @param name of the file, for messages
 */
export function readBuilds(text: string, name: string): BuildsFile {
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/);
  const isSaying = (line: string): boolean => line.trim() !== '' && !line.trim().startsWith('#');
  const separator = separatorOf(lines.find(isSaying) ?? '');
  const problemAt = (line: number, position: number, said: Said): Problem => {
    const sourceLine = lines[line - 1] ?? '';
    return {
      severity: 'error',
      file: name,
      line,
      ...cellPlace(sourceLine, position, separator),
      sourceLine,
      ...said,
    };
  };
  const nothing = (problem: Problem): BuildsFile => ({
    rows: [],
    problems: [problem],
    unused: [],
    problemOf: () => problem,
  });
  if (text.length > LONGEST_TEXT) return nothing(problemAt(1, 0, TOO_LONG));
  let records: WrittenRow[];
  try {
    records = recordsOf(text, separator);
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    return nothing(problemAt(openQuoteIn(lines), 0, OPEN_QUOTE));
  }
  const [header, ...others] = records;
  if (header === undefined) return nothing(problemAt(1, 0, EMPTY));
  const columns = foundColumns(header.cells);
  const headerProblems = [
    ...columns.repeated.map(({ position, column }) =>
      problemAt(header.line, position, {
        message: `The column "${column}" is there twice.`,
        found: header.cells[position] ?? '',
        expected: 'one column for each thing',
        write: 'another title for one of them',
      }),
    ),
    ...(columns.missing.length === 0
      ? []
      : [problemAt(header.line, 0, missingColumns(columns.missing, header))]),
  ];
  const cellIn = ({ cells }: WrittenRow, column: BuildColumn): string =>
    cells[columns.positions[column] ?? -1] ?? '';
  const problemOf = ({ line, column, message, found, expected, write }: RowMistake): Problem =>
    problemAt(line, columns.positions[column] ?? 0, { message, found, expected, write });
  if (headerProblems.length > 0) return { rows: [], problems: headerProblems, unused: [], problemOf };
  const rows: BuildRow[] = [];
  const problems: Problem[] = [];
  for (const record of others) {
    if (record.cells.slice(header.cells.length).some((cell) => cell !== '')) {
      // The row stays in, so that its build does not seem to lack it.
      problems.push(problemAt(record.line, header.cells.length, tooManyCells(record, header, separator)));
    }
    const [build, part, pieces, hours] = BUILD_COLUMNS.map((column) => cellIn(record, column));
    rows.push({
      line: record.line,
      build: build ?? '',
      part: part ?? '',
      pieces: pieces ?? '',
      hours: hours ?? '',
    });
  }
  return { rows, problems, unused: columns.unused, problemOf };
}

/** The text of all mistakes in a list, in the order of its lines. */
export function buildsFailure(problems: readonly Problem[], name: string): string {
  const sorted = [...problems].sort(
    (first, second) => first.line - second.line || first.column - second.column,
  );
  const count = sorted.length === 1 ? 'There is 1 mistake' : `There are ${sorted.length} mistakes`;
  return [...sorted.map(formatProblem), `${count} in ${name}; nothing was done.`].join('\n\n');
}

function recordsOf(text: string, separator: Separator): WrittenRow[] {
  const parsed: unknown = parse(text, {
    bom: true,
    delimiter: separator,
    info: true,
    record_delimiter: ['\r\n', '\n', '\r'],
    relax_column_count: true,
    relax_quotes: true,
    comment: '#',
    comment_no_infix: true,
    trim: true,
  });
  return (parsed as { info: { lines: number }; record: string[] }[])
    .map(({ info, record }) => ({ line: info.lines, cells: record }))
    .filter(({ cells }) => cells.some((cell) => cell !== '') && !cells[0]?.startsWith('#'));
}

type Said = Pick<Problem, 'message' | 'found' | 'expected' | 'write'>;

const TOO_LONG: Said = {
  message: 'This is longer than any list of builds.',
  found: '',
  expected: 'some dozens of builds',
  write: 'a list of the last months',
};
const EMPTY: Said = {
  message: 'There is nothing in this list.',
  found: '',
  expected: 'a header line, and a row for each part type of every build',
  write: HEADER_EXAMPLE,
};
const OPEN_QUOTE: Said = {
  message: 'A quotation mark is opened and not closed.',
  found: '"',
  expected: 'two quotation marks around a cell, or none',
  write: 'the cell without it',
};

/** First line with an odd number of quotation marks: what is quoted ends on its own line in such lists. */
function openQuoteIn(lines: readonly string[]): number {
  return (
    1 +
    Math.max(
      0,
      lines.findIndex((line) => (line.match(/"/g)?.length ?? 0) % 2 === 1),
    )
  );
}

function missingColumns(missing: readonly BuildColumn[], header: WrittenRow): Said {
  const named = missing.map((column) => `"${column}"`).join(', ');
  return {
    message: `The header line has no column ${named}.`,
    found: header.cells.join(', '),
    expected: 'columns build, part, pieces and hours, in any order',
    write: HEADER_EXAMPLE,
  };
}

function tooManyCells({ cells }: WrittenRow, header: WrittenRow, separator: Separator): Said {
  const isDecimal = separator === ',';
  return {
    message: `This row has ${cells.length} cells, and the header line ${header.cells.length}.`,
    found: cells.slice(header.cells.length).join(separator),
    expected: isDecimal
      ? 'no comma within a cell, unless the cell is quoted'
      : 'as many cells as the header line has',
    write: isDecimal ? '5.3 or "5,3", or semicolons between the cells' : 'the row without what is too much',
  };
}
