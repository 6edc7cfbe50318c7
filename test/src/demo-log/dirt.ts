import { createStream } from '@buildweek/core';

/** Invented people. */
const PEOPLE = [
  'Ada Quill',
  'Bo Marten',
  'Cleo Finch',
  'Dov Larkin',
  'Eda Rook',
  'Fen Alder',
  'Gil Sparrow',
  'Hana Birch',
  'Ivo Wren',
  'Jun Tansy',
  'Kit Hazel',
  'Lou Plover',
  'Mina Sorrel',
  'Ned Teal',
  'Ola Bracken',
  'Pim Heron',
];

/** The cells of one request, by the headings of the log. */
export type Cells = Record<(typeof HEADINGS)[number], string>;
export const HEADINGS = [
  'No',
  'Received',
  'Part',
  'Qty',
  'Process',
  'Material',
  'Priority',
  'Promised',
  'Printer',
  'Print start',
  'Print end',
  'Remove supports work start',
  'Remove supports work end',
  'Ready',
  'Status',
  'Step',
  'Requested by',
  'Weight g',
  'Remark',
] as const;

/** Makes of a clean list what people make of one in a year: the same dirt every time. */
export function soiled(clean: readonly Cells[]): string[][] {
  const draw = createStream('demo log', 0, 'dirt', 'requests');
  const rows: string[][] = [];
  clean.forEach((cells, index) => {
    const row = { ...cells, 'Requested by': PEOPLE[Math.floor(draw() * PEOPLE.length)] ?? '' };
    row.Part = misspelled(row.Part, draw());
    row.Priority = inOtherWords(row.Priority, draw());
    if (draw() < 0.015) row.Qty = '';
    if (draw() < 0.01) row.Material = '';
    if (draw() < 0.02) row.Promised = '';
    // A slip of the month, or of the year in January.
    if (row.Ready !== '' && draw() < 0.003) row.Ready = withSlip(row.Ready);
    if (index % 611 === 300) row.Received = 'as always';
    if (index % 907 === 400) row.Ready = '31.02.2026';
    if (index === 1000) row.Remark = '=HYPERLINK("https://example.org";"drawing")';
    if (index === 1200) row.Part = `=${row.Part}`;
    if (index === 1500) row.Remark = 'two lines\nof remark; with a separator';
    const written = HEADINGS.map((heading) => row[heading]);
    if (index === 700 || index === 1900) written.push('x');
    rows.push(written);
    if (draw() < 0.004) rows.push([...written]);
    // Somebody writes the request down again with another number of pieces; the first row stays.
    if (draw() < 0.003 && row.Qty !== '') {
      rows.push(HEADINGS.map((heading) => (heading === 'Qty' ? String(Number(row.Qty) + 1) : row[heading])));
    }
    if (index % 800 === 799) rows.push(HEADINGS.map(() => ''));
  });
  return rows;
}

function misspelled(part: string, luck: number): string {
  if (luck < 0.06) return part.toUpperCase();
  if (luck < 0.14) return part.charAt(0).toUpperCase() + part.slice(1);
  if (luck < 0.18) return part.replace(' ', '-');
  if (luck < 0.21) return `${part} `;
  return part;
}

function inOtherWords(priority: string, luck: number): string {
  if (priority === 'rush') return luck < 0.3 ? 'URGENT' : 'rush';
  return luck < 0.02 ? '' : 'normal';
}

function withSlip(date: string): string {
  return date.replace(/\.(\d\d)\.(\d{4})/, (_, month: string, year: string) =>
    month === '01' ? `.01.${Number(year) - 1}` : `.${String(Number(month) - 1).padStart(2, '0')}.${year}`,
  );
}
