/** What may be the matter with a row; what is done with it stands beside each. */
export type RowTrouble =
  /** The same cells as a row before: left out. */
  | 'duplicate'
  /** The job of a row before, told again with other cells: the later row counts. */
  | 'same job again'
  /** Nothing in the cells that are needed, such as a row of separators: left out. */
  | 'empty'
  /** Not finished: kept as an open job. */
  | 'open'
  | 'cancelled'
  /** Finished before it was asked for: kept for the demand, but without its finish. */
  | 'finished before asked'
  /** Without a date on which it was asked for: left out. */
  | 'no date'
  /** Without a part: kept under one name for all of them. */
  | 'no part'
  /** A date that is none: the cell counts as empty. */
  | 'unreadable date'
  | 'unreadable number'
  | 'unknown outcome'
  /** A time within an hour that the clock shows twice: taken for the first. */
  | 'hour shown twice'
  /** A time within an hour that the clock leaves out: moved an hour on. */
  | 'hour left out'
  /** More cells than the header line: what is too much is left out. */
  | 'too many cells'
  /** A stage that ends before it starts: kept without its times. */
  | 'stage ends before it starts'
  /** A machine's run that ends before it starts: left out. */
  | 'run ends before it starts'
  /** Asked for after the end of the log, or long before the other rows: left out. */
  | 'outside the period'
  /** A cell that begins like a formula: plain text. */
  | 'formula';

/** Rows with the same trouble. */
export interface CountedRows {
  readonly trouble: RowTrouble;
  readonly count: number;
  /** The first of them, at most `ROWS_KEPT`. */
  readonly rows: readonly number[];
}

/** How many row numbers are kept of each trouble. */
export const ROWS_KEPT = 20;

/** What became of the rows of a table. */
export interface RowCounts {
  /** Rows below the header line. */
  readonly read: number;
  /** Rows that became a job, or a run. */
  readonly kept: number;
  readonly troubles: readonly CountedRows[];
}
