import { formatCount } from '@buildweek/charts';
import { formatNumber, type LogReading, type ReadTable } from '@buildweek/results';
import { paragraph } from '../terminal/paragraph.ts';
import { section } from '../terminal/section.ts';
import { harmless, type Style } from '../terminal/style.ts';
import { numbers, tableText, words } from '../terminal/table.ts';

/** Row numbers that are shown of each trouble. */
const MOST_ROWS = 6;

/** What was read of a log, and what it was taken for. */
export function logText(reading: LogReading, style: Style): string {
  const { requests, machines, from, until, weeks, zone } = reading;
  const period = `${from} to ${until.slice(0, 10)} (${formatNumber(weeks, 0)} weeks)`;
  const clock =
    zone === null
      ? 'Times are those on the wall clock of the lab, as they are written; --zone says which zone it is in.'
      : `Times are those on the wall clock in ${zone}.`;
  return [
    ...tableSections(requests, 'jobs', `, ${period}`, [clock], style),
    ...(machines === null ? [] : tableSections(machines, 'runs', '', [], style)),
  ].join('\n\n');
}

function tableSections(
  table: ReadTable,
  what: string,
  period: string,
  notes: readonly string[],
  style: Style,
): string[] {
  const { file, rows, kept, writing, unused } = table;
  const title = `${file}: ${formatCount(kept)} ${what} of ${formatCount(rows)} rows${period}`;
  const leftOut = unused.length === 0 ? [] : [`Not used: ${unused.map((one) => `“${one}”`).join(', ')}.`];
  const lines = [writing, ...notes, ...table.notes, ...leftOut];
  return [
    [style.heading(harmless(title)), '', ...lines.map((line) => paragraph(line, '  '))].join('\n'),
    section('Columns', columnTable(table, style), style),
    ...(table.troubles.length === 0
      ? []
      : [section('Rows that needed care', troubleTable(table, style), style)]),
  ];
}

function columnTable({ columns }: ReadTable, style: Style): string {
  return tableText(
    [words('what'), words('column'), words('how known')],
    columns.map(({ what, headings, how }) => ({
      cells: [what, headings.map((heading) => `“${heading}”`).join(' to '), how],
    })),
    style,
  );
}

function troubleTable({ troubles }: ReadTable, style: Style): string {
  return tableText(
    [numbers('rows'), words('what'), words('what was done'), words('which')],
    troubles.map(({ trouble, done, count, rows }) => ({
      cells: [
        formatCount(count),
        trouble,
        done,
        `${rows.slice(0, MOST_ROWS).join(', ')}${count > MOST_ROWS ? ', …' : ''}`,
      ],
    })),
    style,
  );
}
