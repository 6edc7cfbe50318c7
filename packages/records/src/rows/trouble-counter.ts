import { type CountedRows, ROWS_KEPT, type RowTrouble } from '../row-counts.ts';

/** Counts what is the matter with rows, and keeps the numbers of the first. */
export class TroubleCounter {
  private readonly troubles = new Map<RowTrouble, { count: number; rows: number[] }>();

  add(trouble: RowTrouble, row: number): void {
    const counted = this.troubles.get(trouble) ?? { count: 0, rows: [] };
    counted.count++;
    if (counted.rows.length < ROWS_KEPT && counted.rows[counted.rows.length - 1] !== row)
      counted.rows.push(row);
    this.troubles.set(trouble, counted);
  }

  all(): CountedRows[] {
    return [...this.troubles].map(([trouble, { count, rows }]) => ({ trouble, count, rows }));
  }
}
