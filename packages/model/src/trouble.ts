import type { HourSpan } from './calendar.ts';
import type { CountDistribution, Distribution, Duration } from './distribution.ts';
import type { AttendedWork } from './stage.ts';

/** What stops a machine or station, and how it comes back. Each individual fails by itself. */
export interface Breakdown {
  readonly name: string;
  /** What makes the time between failures pass: hours of warm-up, print and cool-down or of a run, or the clock. */
  readonly by: 'running hours' | 'clock';
  /** Hours from the end of a repair to the next failure. */
  readonly between: Distribution;
  /** What becomes of a build that is printing; a finished one is always spared. */
  readonly effect: 'loses the build' | 'build goes on after the repair';
  readonly repair: Repair;
}

export type Repair =
  /** By one's own people: may pause, goes before rush, holds only the person. */
  | { readonly kind: 'own'; readonly work: AttendedWork }
  /** By a visit: response and visit both pass in the hours of a calendar; null: day and night. Holds nobody. */
  | {
      readonly kind: 'service';
      readonly response: Distribution;
      readonly visit: Distribution;
      readonly calendar: string | null;
    };

/** Something that a machine or station owes from time to time and does when it is free: maintenance, test prints. */
export interface Chore {
  readonly name: string;
  readonly kind: 'maintenance' | 'test print';
  readonly by: 'running hours' | 'clock';
  /** Hours from the end of one to the moment when the next falls due. */
  readonly every: Distribution;
  /** Attended work, or so many hours of running by itself. */
  readonly work: AttendedWork | null;
  readonly duration: Duration | null;
}

/** How people learn that a machine has stopped or ended. */
export type Noticing =
  /** At once while anybody is on duty, else when the next person comes. */
  | { readonly kind: 'when somebody is in' }
  /** Only when somebody comes on duty. */
  | { readonly kind: 'on arrival' }
  /** When somebody comes on duty, and on rounds every so many hours while somebody is. */
  | { readonly kind: 'rounds'; readonly everyHours: number }
  /** At once, day and night: a service visit can be called from home. */
  | { readonly kind: 'monitored' };

/** Builds that do not come out. */
export interface BuildFailure {
  /** Chance per build; the moment is drawn evenly over the print. */
  readonly chancePerBuild: number;
  /** Failures per hour of print, on top of that. */
  readonly perPrintHour: number;
  readonly loses: 'the build' | 'one job';
  /** What has to be cleaned before the machine is free again; it replaces the unloading of a lost build. */
  readonly cleaning: AttendedWork | null;
}

/** What holds for any equipment, machine or station, beside its work. */
export interface EquipmentConditions {
  readonly breakdowns: readonly Breakdown[];
  readonly chores: readonly Chore[];
  readonly noticing: Noticing;
  /** Calendar in whose hours the equipment is there (borrowed, shared); null: always. */
  readonly calendar: string | null;
  /** Local hours of the week in which it may run with nobody on duty; null: always. */
  readonly unattendedHours: readonly HourSpan[] | null;
}

/** Equipment that never fails, owes nothing and is always there. */
export const NO_CONDITIONS: EquipmentConditions = {
  breakdowns: [],
  chores: [],
  noticing: { kind: 'when somebody is in' },
  calendar: null,
  unattendedHours: null,
};

/** When people of a group are not there although their calendar says so. */
export interface Absence {
  /** Chance, for each person and day of work, that a spell of absence begins. */
  readonly chancePerDay: number;
  /** Length of a spell in days of the plan, the first included. */
  readonly days: CountDistribution;
}

/** Stated leave of one person: windows that start in it are not worked. */
export interface Leave extends HourSpan {
  /** Number of the person in the group, from 1. */
  readonly person: number;
}

/** What requesters do to a job after they have asked for it. */
export interface RequesterChanges {
  readonly cancels: ChangeOfMind | null;
  /** A changed file: the job starts again at the first stage, what is built of it is scrap. */
  readonly revises: ChangeOfMind | null;
}

export interface ChangeOfMind {
  /** Chance per job. */
  readonly chance: number;
  /** Hours from the arrival. */
  readonly after: Distribution;
  /** Whether it only happens while nothing of the job has been started. */
  readonly onlyBeforeStart: boolean;
}

/** Requesters who never change their minds. */
export const NO_CHANGES: RequesterChanges = { cancels: null, revises: null };

/** Pieces that are found bad at the end of a stage go round again from an earlier one. */
export interface Rejects {
  /** Chance per piece. */
  readonly share: number;
  /** Name of the stage at which the replacement starts; the same stage or an earlier one. */
  readonly backTo: string;
}
