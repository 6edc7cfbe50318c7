/** What may be the matter with a row; what is done with it stands beside each. */
export type RowTrouble =
  /** The same cells as a row before: left out. */
  | 'duplicate'
  /** The same cells as a row before, where neither a number nor a clock would tell two requests apart: kept. */
  | 'possible duplicate'
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
  /** A date that is none: the cell counts as empty, and the row is left out when it is when the job was asked for. */
  | 'unreadable date'
  /** A number of pieces that is none: the cell counts as empty. */
  | 'unreadable number'
  /** An outcome of a run that is none of the known words: taken as done. */
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
  /** A run without an end that has another run of the same machine behind it: left out. */
  | 'run without an end'
  /** Asked for long before or after all the others: left out. Finished long after: kept without its finish. */
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
