import type { ReportDocument } from '@buildweek/results';
import writeExcelFile, { type Cell } from 'write-excel-file/node';
import { sameZip } from '../zip/same-zip.ts';
import { assumptionRows, FIGURE_COLUMNS } from './columns.ts';
import type { FigureRow } from './figure-row.ts';
import { figuresOf } from './figures-of.ts';
import { harmlessText } from './harmless-text.ts';

function cellOf(value: string | number | null): Cell {
  if (value === null || value === '') return null;
  if (typeof value === 'number') return Number.isFinite(value) ? { type: Number, value } : null;
  return { type: String, value: harmlessText(value) };
}

function sheetOf(section: string, rows: readonly FigureRow[]) {
  return {
    sheet: section,
    stickyRowsCount: 1,
    orientation: 'landscape' as const,
    columns: FIGURE_COLUMNS.map(({ width }) => ({ width })),
    data: [
      FIGURE_COLUMNS.map(({ title }): Cell => ({ type: String, value: title, fontWeight: 'bold' })),
      ...rows.map((row) => FIGURE_COLUMNS.map(({ contentOf }) => cellOf(contentOf(row)))),
    ],
  };
}

/**
 * Every number of the report as a workbook: one sheet for each section, its first row frozen, numbers as numbers. The
 * same document gives the same bytes.
 */
export async function workbookOf(document: ReportDocument): Promise<Uint8Array> {
  const rows = [...figuresOf(document), ...assumptionRows(document)];
  const sections = [...new Set(rows.map(({ section }) => section))];
  const sheets = sections.map((section) =>
    sheetOf(
      section,
      rows.filter((row) => row.section === section),
    ),
  );
  const written = await writeExcelFile(sheets, { fontFamily: 'Arial', fontSize: 10 }).toBuffer();
  return sameZip(written, { application: 'buildweek table' });
}
