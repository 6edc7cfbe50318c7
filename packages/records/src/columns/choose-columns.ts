import { TableProblem } from '../table-problem.ts';
import type { ColumnPlace, Places } from './columns.ts';
import type { TableHead } from './table-head.ts';

/**
 * The columns that a mapping names.
 * @param named headings, or null for what is not there
 * @throws TableProblem when a heading is not there
 */
export function mappedColumns<Column extends string>(
  named: Readonly<Partial<Record<Column, string | null>>>,
  head: TableHead,
): { places: Places<Column>; none: ReadonlySet<Column> } {
  const places: Partial<Record<Column, ColumnPlace>> = {};
  const none = new Set<Column>();
  for (const [column, heading] of Object.entries<string | null | undefined>(named) as [
    Column,
    string | null | undefined,
  ][]) {
    if (heading === null) none.add(column);
    else if (heading !== undefined) places[column] = placeOf(heading, column, head);
  }
  return { places, none };
}

/** @throws TableProblem when no column has this heading */
export function placeOf(heading: string, column: string, { headings, line }: TableHead): ColumnPlace {
  const exact = headings.indexOf(heading.trim());
  const position =
    exact >= 0 ? exact : headings.findIndex((other) => other.toLowerCase() === heading.trim().toLowerCase());
  const found = headings[position];
  if (found !== undefined) return { position, heading: found, by: 'mapping' };
  throw new TableProblem(`No column is headed "${heading}", which the mapping names for ${column}.`, {
    row: line,
    found: headings.map((other) => `"${other}"`).join(', '),
    expected: 'one of these headings',
    write: `${column}: ${headings.find((other) => other !== '') ?? 'none'} (or "none" when there is no such column)`,
  });
}

/** Columns that are needed and that nobody can find. */
export function missingColumn(column: string, head: TableHead, example: string): TableProblem {
  return new TableProblem(`No column tells ${example}.`, {
    row: head.line,
    found: head.headings.map((heading) => `"${heading}"`).join(', '),
    expected: `a heading for it, such as "${column}"`,
    write: `a mapping file with the lines\n              columns:\n                ${column}: ${head.headings[0] || 'heading'}`,
  });
}
