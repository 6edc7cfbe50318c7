/** What a column of a list of requests may tell. */
export const JOB_COLUMNS = [
  'job',
  'asked',
  'part',
  'quantity',
  'process',
  'material',
  'priority',
  'promised',
  'finished',
  'status',
  'stage',
  'machine',
  'requester',
] as const;
export type JobColumn = (typeof JOB_COLUMNS)[number];

/** What a column of a machine's record may tell. */
export const RUN_COLUMNS = ['machine', 'start', 'end', 'outcome', 'material', 'job'] as const;
export type RunColumn = (typeof RUN_COLUMNS)[number];

/** Which column is what, and how that is known. */
export interface ColumnPlace {
  /** From 0. */
  readonly position: number;
  readonly heading: string;
  readonly by: 'mapping' | 'heading' | 'content';
}

export type Places<Column extends string> = Readonly<Partial<Record<Column, ColumnPlace>>>;

/** The columns of one stage. */
export interface StagePlaces {
  readonly name: string;
  readonly start: ColumnPlace | null;
  readonly end: ColumnPlace | null;
  readonly isWork: boolean;
}
