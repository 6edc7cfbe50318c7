/** What stands in the lab when the plan starts. Hours are local and count from the start of the plan. */
export interface InitialState {
  /**
   * Local hour of the plan at which this state holds; before it nothing is played but the coming and going of people.
   * Left out or 0: the start of the plan.
   */
  readonly atHour?: number;
  /** In the order of their job numbers. */
  readonly jobs: readonly InitialJob[];
  readonly machines: readonly InitialMachine[];
  /** What has been decided beforehand; without it the rules of the lab decide alone. */
  readonly pinned?: readonly PinnedBuild[];
}

/**
 * A build that somebody has decided on. Its machine is kept for it from the start, and its jobs go into no other build
 * before; from its hour on it is started as soon as the machine is free, somebody is there and at least one of its jobs
 * is ready. Jobs that are not ready then are built like any other. A day after its hour it is given up.
 */
export interface PinnedBuild {
  /** Name of the individual, as `resin 2`. */
  readonly machine: string;
  /** Positions in `InitialState.jobs`; they share material and settings, and are not built yet. */
  readonly jobs: readonly number[];
  /** Local hour since the start of the plan from which on it is started. */
  readonly fromHour: number;
}

/** A job that is there already. Its whole quantity is at one stage. */
export interface InitialJob {
  /** What it is called; a label. Without it, by its number. */
  readonly name?: string;
  /** Name of a demand stream. */
  readonly stream: string;
  readonly quantity: number;
  readonly rush: boolean;
  /** Not after the hour of the state. */
  readonly arrivedAtHour: number;
  readonly dueAtHour: number | null;
  /** Name of the stage of its route. */
  readonly stage: string;
  /**
   * Null: it waits for this stage. A number: so many hours of this stage remain to be done; a plain wait goes
   * on, attended work is resumed at its rank. Not for build and station stages (see {@link InitialMachine}).
   */
  readonly remainingHours: number | null;
}

/** A machine that holds a build when the plan starts. */
export interface InitialMachine {
  /** Name of the individual, as `resin 2`. */
  readonly machine: string;
  /** When the unattended part of its build ends; then it waits to be unloaded. */
  readonly busyUntilHour: number;
  readonly material: string | null;
  /** Positions in `InitialState.jobs` of the jobs in the build; they must name the build stage. */
  readonly jobs: readonly number[];
}
