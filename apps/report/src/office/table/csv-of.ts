import type { ReportDocument } from '@buildweek/results';
import { assumptionRows, FIGURE_COLUMNS } from './columns.ts';
import { figuresOf } from './figures-of.ts';
import { harmlessText } from './harmless-text.ts';

/** Says to spreadsheets that the file is UTF-8; without it some take it for another encoding and spoil every name. */
const BYTE_ORDER_MARK = '\ufeff';

function cell(value: string | number | null): string {
  if (value === null) return '';
  if (typeof value === 'number') return Number.isFinite(value) ? String(value) : '';
  const text = harmlessText(value);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/**
 * Every number of the report in long form: one row each, with its interval. Comma, point and CRLF as in RFC 4180, UTF-8
 * with a byte order mark; numbers in full and with a point, text that would start a formula with an apostrophe.
 */
export function csvOf(document: ReportDocument): string {
  const rows = [...figuresOf(document), ...assumptionRows(document)];
  const lines = [
    FIGURE_COLUMNS.map(({ title }) => cell(title)),
    ...rows.map((row) => FIGURE_COLUMNS.map(({ contentOf }) => cell(contentOf(row)))),
  ];
  return `${BYTE_ORDER_MARK}${lines.map((line) => `${line.join(',')}\r\n`).join('')}`;
}
