import { GRID, INK, MUTED_INK } from '@buildweek/charts';
import type { Cell, Grid } from '../content/block.ts';
import { plainText } from '../plain-text.ts';
import { colour, shortened, TYPEFACE } from './deck.ts';
import type { Place } from './slide-chart.ts';
import type { Slide, SlideBorder, SlideTableCell } from './slide-writer.ts';

/** Letters of a cell, so that a long name does not push a table over the edge of its slide. */
const MOST_LETTERS = 110;
/** Inches of one letter of one point. */
const LETTER_WIDTH = 0.52 / 72;
const LINE_HEIGHT = 1.2 / 72;
const CELL_PADDING = 0.1;

interface TableLook {
  /** Points. */
  readonly fontSize: number;
  /** Where it stands, and how high it may be. */
  readonly place: Place;
  /** Share of the width that the first column takes. */
  readonly firstColumn: number;
}

function textOf(cell: Cell, most: number): string {
  const text = typeof cell === 'string' ? cell : `${cell.value} (${cell.range})`;
  return shortened(plainText(text), most);
}

/** Inches that a row takes, reckoned from its letters. */
function rowHeight(texts: readonly string[], widths: readonly number[], fontSize: number): number {
  const lines = texts.map((text, at) => {
    const fits = Math.max(4, Math.floor(((widths[at] ?? 1) - 0.15) / (LETTER_WIDTH * fontSize)));
    return text.split('\n').reduce((sum, line) => sum + Math.max(1, Math.ceil(line.length / fits)), 0);
  });
  return Math.max(...lines) * LINE_HEIGHT * fontSize + CELL_PADDING;
}

/**
 * Puts a table on a slide, as many of its rows as fit.
 * @returns rows that did not fit
 */
export function addTable(slide: Slide, grid: Grid, look: TableLook): number {
  const { x, y, w, h } = look.place;
  const others = grid.columns.length - 1;
  const widths = grid.columns.map((_, at) =>
    at === 0 ? w * look.firstColumn : (w * (1 - look.firstColumn)) / others,
  );
  const heads = grid.columns.map(({ title }) => shortened(plainText(title), MOST_LETTERS));
  let height = rowHeight(heads, widths, look.fontSize);
  const rows: string[][] = [];
  for (const row of grid.rows) {
    const texts = row.map((cell) => textOf(cell, MOST_LETTERS));
    const more = rowHeight(texts, widths, look.fontSize);
    if (height + more > h) break;
    height += more;
    rows.push(texts);
  }
  const border: SlideBorder = { type: 'solid', pt: 0.75, color: colour(GRID) };
  const none: SlideBorder = { type: 'none' };
  const cell = (text: string, at: number, isHead: boolean): SlideTableCell => ({
    text,
    options: {
      align: grid.columns[at]?.numeric === true ? 'right' : 'left',
      bold: isHead || at === 0,
      color: colour(isHead ? MUTED_INK : INK),
      border: [none, none, border, none],
    },
  });
  slide.addTable(
    [
      heads.map((head, at) => cell(head, at, true)),
      ...rows.map((row) => row.map((text, at) => cell(text, at, false))),
    ],
    {
      x,
      y,
      w,
      colW: widths,
      fontFace: TYPEFACE,
      fontSize: look.fontSize,
      valign: 'top',
      margin: [0.04, 0.06, 0.04, 0.06],
    },
  );
  return grid.rows.length - rows.length;
}
