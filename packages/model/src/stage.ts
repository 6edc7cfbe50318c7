import type { Duration } from './distribution.ts';
import type { Rejects } from './trouble.ts';

/** Work that needs hands for its whole length. */
export interface AttendedWork {
  readonly skill: string;
  /** How many persons are needed at once. */
  readonly persons: number;
  readonly duration: Duration;
  /** Whether it may stop at the end of a shift and be resumed, by anyone with the skill. */
  readonly pausable: boolean;
}

/** What a stage duration counts for: it is drawn once per job, once per piece (and summed), or once per build. */
export type DurationBasis = 'job' | 'part' | 'build' | 'batch';

interface StageCommon {
  readonly name: string;
  /**
   * What goes through the stage together: the pieces of one job, or everything that was built together.
   * `build` is allowed only directly behind the build stage or another stage of level `build`.
   */
  readonly level: 'job' | 'build';
  /** When pieces go on: when the whole job has passed the stage, or as they come. */
  readonly move: 'per job' | 'per build';
  /** Whether the carrier of the build is free again when this stage ends. */
  readonly emptiesCarrier: boolean;
  /** The longest that pieces should wait between the stage before and this one, hours; exceeding it is counted. */
  readonly maximumWaitHours: number | null;
  /** Null: nothing is rejected here. Only for work and station stages of level `job`. */
  readonly rejects: Rejects | null;
}

/** Attended work at a bench or a desk. */
export interface WorkStage extends StageCommon {
  readonly kind: 'work';
  readonly work: AttendedWork;
  readonly basis: 'job' | 'part' | 'build';
}

/** A build on a machine of a group; times come from the machine group and from the part type. */
export interface BuildStage extends StageCommon {
  readonly kind: 'build';
  readonly machineGroup: string;
}

/** A batch in a station: loading and unloading are attended, the run is so only when it says by whom. */
export interface StationStage extends StageCommon {
  readonly kind: 'station';
  readonly stationGroup: string;
  readonly load: AttendedWork | null;
  readonly run: Duration;
  readonly runAttendance: StationAttendance | null;
  readonly basis: DurationBasis;
  readonly unload: AttendedWork | null;
}

/** Who stays at a station while it runs. */
export interface StationAttendance {
  readonly skill: string;
  readonly persons: number;
  readonly pausable: boolean;
}

/** A plain wait that needs nothing: drying on a shelf, cooling in the rack; or a question to the requester. */
export interface WaitStage extends StageCommon {
  readonly kind: 'wait';
  readonly duration: Duration;
  /** Chance that the requester has to answer first; the time then counts as waiting for the requester. */
  readonly requesterChance: number | null;
}

export type Stage = WorkStage | BuildStage | StationStage | WaitStage;
