import type { AttendedWork } from '@buildweek/model';
import type { SourcePath } from '../source/source-node.ts';

/** Attended work of the lab with its place in the file, for the checks that look at people. */
export interface AttendedPlace {
  readonly path: SourcePath;
  /** What it is, as `set-up of "resin"`. */
  readonly what: string;
  readonly work: AttendedWork;
  /** How many times the typical duration it can take at most; above 1 for work per part. */
  readonly most: number;
  /** Why it can be so many times, as `for a job of 12 parts`; empty for once. */
  readonly because: string;
}
