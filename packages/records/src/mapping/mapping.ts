import type { JobColumn, RunColumn } from '../columns/columns.ts';
import type { DateOrder } from '../dates/written-date.ts';
import type { Separator } from '../text/separator.ts';

/** What the user says about a log; everything that is left out is guessed. */
export interface Mapping {
  readonly separator?: Separator;
  readonly dates?: DateOrder;
  /** Zone of the lab's wall clock. */
  readonly zone?: string;
  /** Headings of columns; null: there is no such column. */
  readonly columns?: Readonly<Partial<Record<JobColumn, string | null>>>;
  /** All stages that have columns; those that would be guessed do not count then. */
  readonly stages?: readonly MappedStage[];
  readonly rushMeans?: readonly string[];
  readonly cancelledMeans?: readonly string[];
  /** Spellings of parts, and the names that they get. */
  readonly parts?: Readonly<Record<string, string>>;
  /** The same for the records of machines. */
  readonly machines?: MachineMapping;
}

/** What the user says about the records of machines. */
export interface MachineMapping {
  readonly separator?: Separator;
  readonly dates?: DateOrder;
  readonly columns?: Readonly<Partial<Record<RunColumn, string | null>>>;
  readonly doneMeans?: readonly string[];
  readonly failedMeans?: readonly string[];
  readonly brokeDownMeans?: readonly string[];
}

/** A stage, with the headings of its columns. */
export interface MappedStage {
  readonly name: string;
  readonly start?: string;
  readonly end?: string;
  readonly isWork: boolean;
}
