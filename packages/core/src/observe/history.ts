import type { Step } from '@buildweek/model';
import type { WaitCause } from '@buildweek/results';

/**
 * What one replication leaves behind. Times are whole milliseconds. Everything that is a time average or a
 * sum over time is clipped to the measured window; what is said of jobs is said of the cohort, the jobs that
 * *arrive* in the window. Plain data and typed arrays, so that it crosses a worker boundary by transfer.
 */
export interface History {
  readonly replication: number;
  /** Start and end of the measured window, elapsed milliseconds since the start of the plan. */
  readonly windowStart: number;
  readonly windowEnd: number;
  /** When the replication ended: the cohort was finished, or the cap was reached. */
  readonly endedAt: number;
  /** One entry for each part type and priority, in the order of `Lab.parts`, normal before rush. */
  readonly jobClasses: readonly JobClassHistory[];
  /** One entry for each measured week. */
  readonly weeks: WeekHistory;
  readonly queues: readonly QueueHistory[];
  /** In the order of `Lab.parts`. */
  readonly partHours: readonly PartHoursHistory[];
  readonly machines: readonly UnitHistory[];
  readonly stations: readonly UnitHistory[];
  readonly people: readonly PeopleHistory[];
  readonly laws: LawHistory;
  readonly trace: readonly TraceEntry[] | null;
  /** In which state every machine, station and person was when, in the order of the ends; null without a trace. */
  readonly states: readonly StateSpan[] | null;
  /** The first jobs one by one, by their numbers; not there when none were to be followed. */
  readonly followed?: readonly FollowedJob[];
}

/** What became of one job. */
export interface FollowedJob {
  /** Elapsed milliseconds at which its last good part was done, or at which it was cancelled; Infinity: neither. */
  readonly endedAt: number;
  readonly isCancelled: boolean;
  /**
   * For each step of its part type, mean milliseconds of its pieces since the start of the plan; not there while it
   * goes on, nor when it was not asked for.
   */
  readonly work?: Float64Array;
  /** The same, step-major: `step * WAIT_CAUSES.length + cause`. */
  readonly waits?: Float64Array;
}

/** A machine, a station or a person was in one state, whatever the measured window. */
export interface StateSpan {
  /** Elapsed milliseconds since the start of the plan. */
  readonly from: number;
  readonly to: number;
  /** Of MACHINE_STATES, STATION_STATES or PERSON_STATES. */
  readonly state: string;
  /** Name of the machine or station; null for a person. */
  readonly unit: string | null;
  /** Name of the person; null for a machine or station. */
  readonly person: string | null;
}

export interface JobClassHistory {
  readonly part: string;
  readonly rush: boolean;
  /** Jobs of the cohort. */
  readonly arrived: number;
  readonly unfinished: number;
  /** Withdrawn by their requesters; neither finished nor unfinished. */
  readonly cancelled: number;
  /** Made outside, those that were withdrawn left out; a part of `arrived`, finished or not. */
  readonly sentOut: number;
  /** Jobs with a promise, and those of them that were finished by then. */
  readonly promised: number;
  readonly onTime: number;
  /** Lead times of finished cohort jobs, ascending. */
  readonly leadTimes: Float64Array;
  /** For each of `Lab.deadlines` how many of these jobs ended by it; not there in labs without any. */
  readonly endedBy?: Float64Array;
}

export interface WeekHistory {
  readonly arrivedJobs: Float64Array;
  /** Of the jobs that arrived in the week: those with a promise, and those of them that kept it. */
  readonly promisedJobs: Float64Array;
  readonly onTimeJobs: Float64Array;
  readonly finishedJobs: Float64Array;
  readonly finishedParts: Float64Array;
  /** Time average of the number of jobs in the lab. */
  readonly jobsInLab: Float64Array;
}

export interface QueueHistory {
  readonly name: string;
  readonly kind: 'machine' | 'station' | 'people' | 'all';
  /** Integral of the queue length over the window, job milliseconds. */
  readonly area: number;
  /** Job visits that left the queue in the window (pieces of a split job count by share), and their waits. */
  readonly visits: number;
  readonly waitSum: number;
  /** Single waits, ascending, when `observe.queueWaits` was asked for; else null. */
  readonly waits: Float64Array | null;
  /** Mean length in each hour of the week (168) and in each measured week. */
  readonly byHourOfWeek: Float64Array;
  readonly byWeek: Float64Array;
}

/** Piece-weighted milliseconds of finished cohort jobs: over all steps they add up to the sum of lead times. */
export interface PartHoursHistory {
  readonly part: string;
  readonly steps: readonly Step[];
  readonly finishedJobs: number;
  /** Pieces that had to be made again in the window: failed builds, rejects. */
  readonly repeatedPieces: number;
  /** Those of them that had to be built again, not only to be worked on again. */
  readonly rebuiltPieces: number;
  /** Pieces in builds that ended or failed in the window, whatever became of them after it. */
  readonly builtPieces: number;
  /** For each stage: job visits in the window that had waited longer for it than they should. */
  readonly waitsTooLong: Float64Array;
  /** Jobs made in the lab that were finished in the window, cohort or not. */
  readonly madeJobs: number;
  /** Good pieces of the jobs that were finished in the window: made in the lab, and outside. */
  readonly madePieces: number;
  readonly sentOutPieces: number;
  /** Jobs made outside that were finished in the window. */
  readonly sentOutJobs: number;
  /** One entry for each step. */
  readonly work: Float64Array;
  /** Step-major: `step * WAIT_CAUSES.length + cause`. */
  readonly waits: Float64Array;
}

/** A machine or a station. */
export interface UnitHistory {
  readonly group: string;
  readonly name: string;
  /** In the order of MACHINE_STATES or STATION_STATES. */
  readonly timeInState: Float64Array;
  /** Builds or batches that ended in the window, their pieces, and the sum of their fills (0 to 1 each). */
  readonly runs: number;
  readonly pieces: number;
  readonly fillSum: number;
  /** Sums over these builds of their heights, mm, and of the volumes of their parts, mm3; 0 where no shapes are known. */
  readonly heightSum: number;
  readonly partVolumeSum: number;
  /** Builds that failed, and breakdowns, in the window. */
  readonly failures: number;
  readonly breakdowns: number;
  /**
   * Milliseconds of the window in which a machine warmed up, printed or cooled down with nobody on duty by the
   * calendars (leave and absence not counted); 0 for stations.
   */
  readonly ranAlone: number;
}

export interface PeopleHistory {
  readonly group: string;
  readonly count: number;
  /** For each individual, in the order of PERSON_STATES: `individual * PERSON_STATES.length + state`. */
  readonly timeInState: Float64Array;
  /** Names of stages (build stages with their phase), and person milliseconds spent on each. */
  readonly stages: readonly string[];
  readonly timeByStage: Float64Array;
  /** Mean number of persons at work, and on duty, in each hour of the week (168). */
  readonly busyByHourOfWeek: Float64Array;
  readonly onDutyByHourOfWeek: Float64Array;
}

/** Both sides of the laws that hold in every record; equal to the millisecond. */
export interface LawHistory {
  /** Integral of the number of jobs in the lab, from the running count. */
  readonly jobArea: number;
  /** The same, summed over the jobs' own stays. */
  readonly jobStays: number;
  /** Largest difference between the sum of the states of a unit and calendar time. */
  readonly machineImbalance: number;
  readonly stationImbalance: number;
  readonly personImbalance: number;
  /** Largest difference, over finished jobs, between work plus waits and the lead time. */
  readonly leadTimeImbalance: number;
}

/** One line of a trace. */
export interface TraceEntry {
  /** Elapsed milliseconds since the start of the plan. */
  readonly time: number;
  readonly what: TraceEvent;
  /** Job number, or -1. */
  readonly job: number;
  readonly part: string | null;
  readonly stage: string | null;
  readonly phase: string | null;
  /** Machine or station. */
  readonly unit: string | null;
  /** Persons at it. */
  readonly persons: readonly string[];
  readonly pieces: number;
  /** For `has waited`: the cause; else null. */
  readonly cause: WaitCause | null;
  /**
   * For `has waited`: for how long up to now, milliseconds; for `job arrives`: how long ago it came, above 0 for
   * jobs that stand in the lab when the plan starts; else 0.
   */
  readonly duration: number;
  /** For `job arrives`: when it is promised; null without a promise, and for everything else. */
  readonly dueAt: number | null;
  /** For `job arrives`: whether it is a rush job; else false. */
  readonly rush: boolean;
}

export type TraceEvent =
  | 'job arrives'
  | 'job ends'
  | 'job is cancelled'
  | 'job is revised'
  | 'parts are rejected'
  | 'step starts'
  | 'step pauses'
  | 'step resumes'
  | 'step ends'
  | 'has waited'
  | 'step is broken off'
  | 'breaks down'
  | 'is repaired'
  | 'chore starts'
  | 'chore ends'
  | 'other duties start'
  | 'other duties end'
  | 'on duty'
  | 'off duty';
