import {
  checkOffsets,
  type DateOrder,
  decidedOrder,
  OrderEvidence,
  TableDates,
  type TableHead,
  type TableRow,
  tableHead,
} from '@buildweek/records';
import type { TableFile } from './table-file.ts';

/** Rows from which columns are guessed. */
const HEAD_ROWS = 5000;

/**
 * The headings of a table and its first rows.
 * @throws TableProblem when there is no table
 */
export async function readHead(
  table: TableFile,
  kind: 'jobs' | 'runs',
): Promise<{ head: TableHead; isWhole: boolean }> {
  const rows: TableRow[] = [];
  await table.eachRow((row) => rows.push(row) < HEAD_ROWS);
  return { head: tableHead(rows, kind), isWhole: rows.length < HEAD_ROWS };
}

/**
 * How the dates of a table are read. The first rows tell the order of day and month nearly always; where they do not,
 * all others are looked at.
 *
 * @throws TableProblem when it cannot be told
 */
export async function readDates(
  table: TableFile,
  head: TableHead,
  isWhole: boolean,
  positions: readonly number[],
  said: { readonly order: DateOrder | undefined; readonly zone: string | null; readonly key: string },
): Promise<TableDates> {
  const cells = head.rows.flatMap(({ line, cells: own }) =>
    positions.map((position) => ({ row: line, cell: own[position] ?? '' })),
  );
  if (said.zone === null) checkOffsets(cells);
  if (said.order !== undefined) return new TableDates(said.order, said.zone);
  let evidence = new OrderEvidence();
  for (const { cell, row } of cells) evidence.look(cell, row);
  if (evidence.order() === null && !isWhole) {
    evidence = new OrderEvidence();
    await table.eachRow(({ line, cells: own }) => {
      if (line > head.line) for (const position of positions) evidence.look(own[position] ?? '', line);
      return true;
    });
  }
  return new TableDates(decidedOrder(evidence, said.key), said.zone);
}
