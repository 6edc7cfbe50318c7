/** Columns of a list of measured builds. */
export const BUILD_COLUMNS = ['build', 'part', 'pieces', 'hours'] as const;
export type BuildColumn = (typeof BUILD_COLUMNS)[number];

/** One row of a list of measured builds, as it is written: so many pieces of a part type in a build. */
export interface BuildRow extends Readonly<Record<BuildColumn, string>> {
  /** Line in the list, counted from 1. */
  readonly line: number;
}

/** Something in the list that is wrong. */
export interface RowMistake {
  readonly line: number;
  readonly column: BuildColumn;
  /** One sentence. */
  readonly message: string;
  /** What stands there; empty when nothing does. */
  readonly found: string;
  readonly expected: string;
  /** What to write instead. */
  readonly write: string;
}
