import { harmless, type Style } from './style.ts';

export interface Column {
  readonly title: string;
  readonly align: 'left' | 'right';
}

/** A column of words. */
export function words(title: string): Column {
  return { title, align: 'left' };
}

/** A column of numbers. */
export function numbers(title: string): Column {
  return { title, align: 'right' };
}

/** A row of cells; `over` stands on a line of its own above it, and the cells are set in; `under` below it. */
export interface Row {
  readonly over?: string;
  readonly cells: readonly string[];
  readonly under?: string;
}

const LONGEST_CELL = 60;
const GAP = '  ';
const MARGIN = '  ';

/** Columns in line, with their titles above. */
export function tableText(columns: readonly Column[], rows: readonly Row[], style: Style): string {
  const cells = rows.map((row) => row.cells.map((cell) => short(harmless(cell))));
  const widths = columns.map(({ title }, index) =>
    Math.max(lengthOf(title), ...cells.map((row) => lengthOf(row[index] ?? ''))),
  );
  const line = (texts: readonly string[]): string =>
    columns
      .map(({ align }, index) => {
        const text = texts[index] ?? '';
        const space = ' '.repeat(Math.max(0, (widths[index] ?? 0) - lengthOf(text)));
        return align === 'left' ? text + space : space + text;
      })
      .join(GAP)
      .trimEnd();
  const indent = rows.some(({ over }) => over !== undefined) ? MARGIN + MARGIN : MARGIN;
  const lines = [style.faint(indent + line(columns.map((column) => column.title)))];
  rows.forEach((row, index) => {
    if (row.over !== undefined) lines.push(MARGIN + harmless(row.over));
    lines.push(indent + line(cells[index] ?? []));
    if (row.under !== undefined) lines.push(style.faint(`${MARGIN}${MARGIN}${harmless(row.under)}`));
  });
  return lines.join('\n');
}

function short(text: string): string {
  const letters = Array.from(text);
  return letters.length <= LONGEST_CELL ? text : `${letters.slice(0, LONGEST_CELL - 1).join('')}…`;
}

function lengthOf(text: string): number {
  return Array.from(text).length;
}
