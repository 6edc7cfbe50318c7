import { writtenDate } from '../dates/written-date.ts';
import { TableProblem } from '../table-problem.ts';
import type { TableRow } from '../table-row.ts';
import { type ColumnProfile, columnProfile } from './column-profile.ts';
import { knownHeadings } from './guess-columns.ts';

/** The headings of a table, and what stands below them in its first rows. */
export interface TableHead {
  readonly line: number;
  readonly headings: readonly string[];
  readonly profiles: readonly ColumnProfile[];
  readonly rows: readonly TableRow[];
}

/** Lines in which the headings may stand: titles and empty lines may come first. */
const PREFACE = 20;
/** Fewer rows say nothing about a lab. */
const FEWEST_ROWS = 10;

/**
 * Finds the header line.
 * @param rows the first of the table
 * @throws TableProblem when there is no table, no header line, or next to nothing below it
 */
export function tableHead(rows: readonly TableRow[], kind: 'jobs' | 'runs'): TableHead {
  const filled = rows.filter(({ cells }) => cells.some((cell) => cell.trim() !== ''));
  const widest = Math.max(0, ...filled.map(({ cells }) => cells.length));
  if (filled.length === 0 || widest < 2) throw noTable(filled[0]);
  const candidates = filled.slice(0, PREFACE);
  const header =
    candidates.find(({ cells }) => knownHeadings(cells, kind) >= 2) ??
    candidates.find(({ cells }) => cells.filter((cell) => cell.trim() !== '').length >= widest / 2) ??
    filled[0];
  if (header === undefined || header.cells.filter((cell) => cell.trim() !== '').length < 2) {
    throw noTable(header ?? filled[0]);
  }
  if (header.cells.some((cell) => writtenDate(cell) !== null)) throw noHeadings(header);
  const below = filled.filter(({ line }) => line > header.line);
  if (below.length < FEWEST_ROWS) throw tooFew(header, below.length);
  const headings = header.cells.map((cell) => cell.trim());
  return {
    line: header.line,
    headings,
    profiles: headings.map((_, position) => columnProfile(below.map(({ cells }) => cells[position] ?? ''))),
    rows: below,
  };
}

function noTable(first: TableRow | undefined): TableProblem {
  return new TableProblem('This is no table.', {
    row: first?.line ?? 1,
    found: shortened(first?.cells.join(' ') ?? ''),
    expected:
      'a header line and a row for each request, with commas, semicolons, tabs or | between the cells',
    write:
      'the list, saved as CSV by the program that it is kept in; "separator: ;" in a mapping file if it has another',
  });
}

function noHeadings(header: TableRow): TableProblem {
  return new TableProblem('The first line looks like a request, not like headings.', {
    row: header.line,
    found: shortened(header.cells.join(', ')),
    expected: 'a line that says what each column is',
    write: 'a first line such as asked;part;quantity;finished',
  });
}

function tooFew(header: TableRow, rows: number): TableProblem {
  return new TableProblem(
    rows === 0 ? 'There is nothing below the headings.' : `There are only ${rows} rows below the headings.`,
    {
      row: header.line,
      found: shortened(header.cells.join(', ')),
      expected: `at least ${FEWEST_ROWS} rows; a quarter of a year says more, a year most`,
      write:
        'a longer list; with less, type the demand into a scenario (buildweek typical-machines shows how)',
    },
  );
}

export function shortened(text: string): string {
  return text.length > 80 ? `${text.slice(0, 79)}…` : text;
}
