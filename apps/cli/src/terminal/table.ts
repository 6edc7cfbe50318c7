import { columnWidths } from './column-widths.ts';
import { harmless, type Style } from './style.ts';
import { lengthOf, wrapped } from './wrap.ts';

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
const LEAST_LINE = 20;
/** A column of words is made no narrower than this. */
const NARROWEST = 14;

/**
 * Columns in line, with their titles above. Where the terminal is too narrow for that, titles and words are broken
 * over several lines; where it is too narrow even then, every row becomes a sentence of titles and cells.
 *
 * @param room letters of a line; without a terminal there is no end to it
 */
export function tableText(
  columns: readonly Column[],
  rows: readonly Row[],
  style: Style,
  room: number = process.stdout.columns ?? Number.POSITIVE_INFINITY,
): string {
  const cells = rows.map((row) => row.cells.map((cell) => short(harmless(cell))));
  const longest = columns.map((_, index) => Math.max(0, ...cells.map((row) => lengthOf(row[index] ?? ''))));
  const liked = columns.map(({ title }, index) => Math.max(lengthOf(title), longest[index] ?? 0));
  // Figures are never broken, their titles are.
  const least = columns.map(({ title, align }, index) => {
    const whole = align === 'left' ? NARROWEST : (longest[index] ?? 0);
    const word = Math.max(...title.split(' ').map(lengthOf));
    return Math.min(liked[index] ?? 0, Math.max(whole, word));
  });
  const indent = rows.some(({ over }) => over !== undefined) ? MARGIN + MARGIN : MARGIN;
  const gaps = GAP.length * (columns.length - 1);
  const widths = columnWidths(liked, least, room - indent.length - gaps);
  const titles = columns.map(({ title }) => title);
  const shown = (texts: readonly string[], isNamed: boolean): string[] =>
    widths === null ? inWords(titles, texts, isNamed, indent, room) : inLine(columns, texts, widths, indent);
  const lines = widths === null ? [] : shown(titles, false).map(style.faint);
  rows.forEach(({ over, under }, index) => {
    if (over !== undefined) lines.push(...setIn(over, MARGIN, room));
    lines.push(...shown(cells[index] ?? [], over !== undefined));
    if (under !== undefined) lines.push(...setIn(under, MARGIN + MARGIN, room).map(style.faint));
  });
  return lines.join('\n');
}

/** One row of the table, on as many lines as its longest cell takes. */
function inLine(
  columns: readonly Column[],
  texts: readonly string[],
  widths: readonly number[],
  indent: string,
): string[] {
  const cells = widths.map((width, index) => wrapped(texts[index] ?? '', width));
  const height = Math.max(...cells.map((lines) => lines.length));
  return Array.from({ length: height }, (_, at) =>
    (
      indent +
      columns
        .map(({ align }, index) => {
          const text = cells[index]?.[at] ?? '';
          const space = ' '.repeat(Math.max(0, (widths[index] ?? 0) - lengthOf(text)));
          return align === 'left' ? text + space : space + text;
        })
        .join(GAP)
    ).trimEnd(),
  );
}

/**
 * One row as titles and cells, one after the other.
 *
 * @param isNamed whether its name stands above it; else its first cell is its name, and needs no title
 */
function inWords(
  titles: readonly string[],
  texts: readonly string[],
  isNamed: boolean,
  indent: string,
  room: number,
): string[] {
  const first = isNamed ? '' : (texts[0] ?? '');
  const told = texts.flatMap((text, index) =>
    text === '' || (index === 0 && !isNamed) ? [] : [`${titles[index] ?? ''} ${text}`.trim()],
  );
  const [line = '', ...rest] = wrapped(
    [first, told.join('; ')].filter((text) => text !== '').join(': '),
    Math.max(LEAST_LINE, room - indent.length - MARGIN.length),
  );
  return [indent + line, ...rest.map((text) => indent + MARGIN + text)];
}

function setIn(text: string, indent: string, room: number): string[] {
  const width = Number.isFinite(room) ? Math.max(LEAST_LINE, room - indent.length) : room;
  return wrapped(harmless(text), width).map((line) => indent + line);
}

function short(text: string): string {
  const letters = Array.from(text);
  return letters.length <= LONGEST_CELL ? text : `${letters.slice(0, LONGEST_CELL - 1).join('')}…`;
}
