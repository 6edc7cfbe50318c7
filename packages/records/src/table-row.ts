/** A row of a table. */
export interface TableRow {
  /** On which it begins, from 1. */
  readonly line: number;
  readonly cells: readonly string[];
}
