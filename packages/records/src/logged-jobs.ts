import type { RowCounts } from './row-counts.ts';

/**
 * Civil time of the lab: milliseconds since 1970-01-01T00:00 as a wall clock shows them, without a zone. On the day
 * that clocks go back, one hour of civil time stands for two.
 */
export type CivilTime = number;

/** A stage of one job, as far as the log knows it. */
export interface LoggedStage {
  readonly name: string;
  readonly start: CivilTime | null;
  readonly end: CivilTime | null;
  /**
   * Whether start and end are those of the work itself. Otherwise they are clicks, with waiting in between, and are
   * never fitted as work.
   */
  readonly isWork: boolean;
}

/** One request of the log. */
export interface LoggedJob {
  /** Line of the file on which it begins; the header line has a number too. */
  readonly row: number;
  /** The number or name that the log gives it, such as an order number. */
  readonly name: string | null;
  readonly asked: CivilTime;
  /** Whether `asked` tells the hour; otherwise it is the midnight at which its day begins. */
  readonly askedHasClock: boolean;
  readonly part: string;
  /** Pieces; null where the log does not say. */
  readonly quantity: number | null;
  readonly process: string | null;
  readonly material: string | null;
  readonly rush: boolean | null;
  /** The latest moment that was promised; of a date alone the end of that day. */
  readonly promised: CivilTime | null;
  /**
   * Null while the job is open, and where the log does not say when it was finished, or says nonsense: `isOpen` tells
   * these apart. A finish that is a date alone counts as the end of that day.
   */
  readonly finished: CivilTime | null;
  /** Whether `finished` tells the hour. */
  readonly finishedHasClock: boolean;
  readonly cancelled: boolean;
  /** Whether it is still in the lab at the end of the log. */
  readonly isOpen: boolean;
  readonly stages: readonly LoggedStage[];
  /** Where an open job stands, when the log says so. */
  readonly stage: string | null;
  readonly machine: string | null;
  /** Who asked: null unless the user wants names of people to be kept. */
  readonly requester: string | null;
}

/** What a machine's own record says of one run. */
export interface MachineRun {
  readonly row: number;
  readonly machine: string;
  readonly start: CivilTime;
  /** Null while it is still running. */
  readonly end: CivilTime | null;
  readonly outcome: 'done' | 'failed' | 'broke down' | 'running';
  readonly material: string | null;
  /** The name of the job, as the record writes it. */
  readonly job: string | null;
}

/** The requests of a period, and what became of the rows of the log. */
export interface LoggedJobs {
  /** Beginning of the day on which the log begins. */
  readonly from: CivilTime;
  /** End of what the log knows: its now. */
  readonly until: CivilTime;
  /** In the order in which they were asked for. */
  readonly jobs: readonly LoggedJob[];
  readonly counted: RowCounts;
}
