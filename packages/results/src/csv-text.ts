/** Spreadsheets take a cell that begins so for a formula, wide letters too. */
const STARTS_A_FORMULA = /^[\s\u00a0]*[=+\-@|%\uff1d\uff0b\uff0d\uff20]/u;

/** A cell of a table: text, a number, or nothing. */
export type CsvCell = string | number | null;

/**
 * Text as a cell that no spreadsheet runs: an apostrophe goes before what would begin a formula, and control characters
 * become spaces. Source: OWASP, CSV Injection.
 */
export function harmlessCell(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
  const plain = text.replace(/[\u0000-\u0009\u000b\u000c\u000e-\u001f\u007f]/g, ' ');
  return STARTS_A_FORMULA.test(plain) ? `'${plain}` : plain;
}

/**
 * A table as RFC 4180 has it: commas, quotes where needed, lines that end with CR LF, in UTF-8 with a byte-order mark,
 * by which spreadsheets know the encoding.
 *
 * @param rows the titles first
 * @throws RangeError for a number that is not finite: leave the cell empty instead
 */
export function csvText(rows: readonly (readonly CsvCell[])[]): string {
  const lines = rows.map((row) => `${row.map(cellText).join(',')}\r\n`);
  return `\ufeff${lines.join('')}`;
}

function cellText(cell: CsvCell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') {
    if (!Number.isFinite(cell)) throw new RangeError(`A table cannot hold ${cell}.`);
    return String(cell);
  }
  const text = harmlessCell(cell);
  return /[",\r\n]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
