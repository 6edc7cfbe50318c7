import { GRID, INK, MUTED_INK } from '@buildweek/charts';
import type { Cell, Grid } from '../content/block.ts';
import { type ColumnWish, columnGroups, columnWidths } from './column-widths.ts';
import { CAPTION, NOTE, PAGE, type Sheet, TEXT_WIDTH, type TextStyle } from './sheet.ts';

const HEAD: TextStyle = { face: 'bold', size: 7.5, colour: MUTED_INK };
const VALUE: TextStyle = { face: 'regular', size: 8, colour: INK };
const RANGE: TextStyle = { face: 'regular', size: 6.8, colour: MUTED_INK };
const GAP = 8;
const ROW_PADDING = 2.5;
/** Names of rows stay on one line up to this width. */
const NAME_WIDTH = 84;
/** A table of no more than so many points is kept on one page. */
export const MOST_KEPT = 230;
/** No single word makes a column wider than this; it is broken instead. */
const WIDEST_WORD = 150;

/** A cell as lines with their styles. */
interface SetLine {
  readonly text: string;
  readonly style: TextStyle;
}

function textsOf(cell: Cell): { text: string; style: TextStyle }[] {
  return typeof cell === 'string'
    ? [{ text: cell, style: VALUE }]
    : [
        { text: cell.value, style: VALUE },
        { text: cell.range.replaceAll(' to ', '\u00a0to\u00a0'), style: RANGE },
      ];
}

function wish(sheet: Sheet, grid: Grid, column: number): ColumnWish {
  const texts = [
    { text: grid.columns[column]?.title ?? '', style: HEAD },
    ...grid.rows.flatMap((row) => textsOf(row[column] ?? '')),
  ];
  let least = 18;
  let most = 18;
  for (const { text, style } of texts) {
    for (const line of text.split('\n')) most = Math.max(most, sheet.widthOf(line, style));
    for (const word of text.split(/[ \n]/)) least = Math.max(least, sheet.widthOf(word, style));
  }
  const name = column === 0 ? Math.min(most, NAME_WIDTH) : 0;
  return { least: Math.max(Math.min(least, WIDEST_WORD), name) + GAP, most: Math.max(most, least) + GAP };
}

/** Draws a table, on as many pages as it takes, its heading again on each; a wide one as several below each other. */
export function drawGrid(sheet: Sheet, grid: Grid): void {
  const wishes = grid.columns.map((_, column) => wish(sheet, grid, column));
  const groups =
    columnWidths(wishes, TEXT_WIDTH) === null
      ? columnGroups(wishes, TEXT_WIDTH)
      : [wishes.map((_, at) => at)];
  groups.forEach((columns, at) => {
    const caption = groups.length === 1 ? grid.caption : `${grid.caption} (${at + 1} of ${groups.length})`;
    const widths = columnWidths(
      columns.map((column) => wishes[column] ?? { least: GAP, most: GAP }),
      TEXT_WIDTH,
    );
    if (widths !== null) drawColumns(sheet, grid, caption, columns, widths);
  });
  grid.reasons.forEach((reason, at) => {
    sheet.leaf('P', () => sheet.paragraph(`${at + 1} ${reason}`, NOTE));
  });
  sheet.y += 10;
}

function drawColumns(
  sheet: Sheet,
  grid: Grid,
  caption: string,
  columns: readonly number[],
  widths: readonly number[],
): void {
  const linesOf = (cell: Cell, at: number): SetLine[] =>
    textsOf(cell).flatMap(({ text, style }) =>
      sheet.lines(text, (widths[at] ?? 0) - GAP, style).map((line) => ({ text: line, style })),
    );
  const heads = columns.map((column, at) =>
    sheet
      .lines(grid.columns[column]?.title ?? '', (widths[at] ?? 0) - GAP, HEAD)
      .map((text) => ({ text, style: HEAD })),
  );
  const rows = grid.rows.map((row) => columns.map((column, at) => linesOf(row[column] ?? '', at)));
  const numeric = columns.map((column) => grid.columns[column]?.numeric === true);
  const row = (cells: readonly (readonly SetLine[])[], isHead: boolean): void =>
    drawRow(sheet, cells, widths, numeric, isHead);
  const whole = rows.reduce((sum, cells) => sum + heightOf(sheet, cells), 0);
  const start = whole > MOST_KEPT ? heightOf(sheet, rows[0] ?? []) + heightOf(sheet, rows[1] ?? []) : whole;
  sheet.ensure(sheet.heightOf(caption, TEXT_WIDTH, CAPTION) + heightOf(sheet, heads) + start + 12);
  sheet.part('Table', () => {
    sheet.leaf('Caption', () => sheet.paragraph(caption, CAPTION));
    sheet.y += 4;
    row(heads, true);
    rows.forEach((cells, at) => {
      // No row stands alone on a page: the last two go together.
      const next = at === rows.length - 2 ? heightOf(sheet, rows[at + 1] ?? []) : 0;
      if (sheet.ensure(heightOf(sheet, cells) + next)) row(heads, true);
      row(cells, false);
    });
  });
  sheet.y += 6;
}

function heightOf(sheet: Sheet, cells: readonly (readonly SetLine[])[]): number {
  const heights = cells.map((lines) => lines.reduce((sum, { style }) => sum + sheet.lineHeight(style), 0));
  return Math.max(0, ...heights) + 2 * ROW_PADDING;
}

function drawRow(
  sheet: Sheet,
  cells: readonly (readonly SetLine[])[],
  widths: readonly number[],
  numeric: readonly boolean[],
  isHead: boolean,
): void {
  const top = sheet.y + ROW_PADDING;
  const height = heightOf(sheet, cells);
  sheet.part('TR', () => {
    let x: number = PAGE.left;
    cells.forEach((lines, at) => {
      const left = x;
      sheet.leaf(isHead || at === 0 ? 'TH' : 'TD', () => {
        let y = top;
        for (const { text, style } of lines) {
          const shift = numeric[at] === true ? (widths[at] ?? 0) - GAP - sheet.widthOf(text, style) : 0;
          sheet.line(text, left + shift, y, style);
          y += sheet.lineHeight(style);
        }
      });
      x += widths[at] ?? 0;
    });
  });
  sheet.y += height;
  const end = PAGE.left + widths.reduce((sum, width) => sum + width, 0) - GAP;
  sheet.ornament(() => {
    sheet.document
      .moveTo(PAGE.left, sheet.y)
      .lineTo(end, sheet.y)
      .lineWidth(isHead ? 0.8 : 0.4)
      .strokeColor(isHead ? MUTED_INK : GRID)
      .stroke();
  });
}
