import type { WorkingDayRule } from './demand.ts';

/** What is promised of a lab, in the order of the scenario. Whether it is met is for a study to say. */
export type Target = ShareWithinTarget | OnTimeTarget | BusyTarget | BudgetTarget | CostPerPartTarget;

interface TargetCommon {
  /** As it was written, for tables and sentences. */
  readonly wording: string;
}

/** Which jobs are meant; null does not restrict. */
export interface JobSelection {
  /** Name of a part type. */
  readonly part: string | null;
  readonly rush: boolean | null;
}

/** What has to hold: the share of all jobs in the long run, or a share of the periods of the measured length. */
export type TargetMeaning =
  | { readonly kind: 'long run' }
  /** The target is met in at least this share of periods, 0 to 1. */
  | { readonly kind: 'chance of a period'; readonly chance: number };

/** How much time a job may take: by the clock, or to the end of the n-th working day after it was asked for. */
export type TimeAllowed = { readonly kind: 'clock'; readonly hours: number } | WorkingDayRule;

/** At least a share of the jobs is finished within a time; so is a percentile of lead times at most that time. */
export interface ShareWithinTarget extends TargetCommon {
  readonly kind: 'share within';
  readonly jobs: JobSelection;
  /** 0 to 1. */
  readonly share: number;
  readonly within: TimeAllowed;
  readonly meaning: TargetMeaning;
}

/** At least a share of the jobs with a promise keeps it. */
export interface OnTimeTarget extends TargetCommon {
  readonly kind: 'on time';
  readonly jobs: JobSelection;
  readonly share: number;
  readonly meaning: TargetMeaning;
}

/**
 * People are at work (other duties included) for at most a share of their hours on duty; machines and stations are in
 * any state but idle, waiting or off for at most a share of the hours of the clock.
 */
export interface BusyTarget extends TargetCommon {
  readonly kind: 'busy';
  readonly of: 'people' | 'machines' | 'stations';
  /** Name of the group; null: all people, all machines or all stations together. */
  readonly group: string | null;
  readonly atMost: number;
  readonly meaning: TargetMeaning;
}

/** Money that is known beforehand: what is bought, or what the lab costs in a year whatever it does. */
export interface BudgetTarget extends TargetCommon {
  readonly kind: 'budget';
  readonly of: 'purchases' | 'year';
  /** In the currency of the scenario. */
  readonly atMost: number;
}

/** Everything that the lab costs, for each finished part. */
export interface CostPerPartTarget extends TargetCommon {
  readonly kind: 'cost per part';
  readonly atMost: number;
}
