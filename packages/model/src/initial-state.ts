/** What stands in the lab when the plan starts. Hours are local and count from the start of the plan. */
export interface InitialState {
  /** In the order of their job numbers. */
  readonly jobs: readonly InitialJob[];
  readonly machines: readonly InitialMachine[];
}

/** A job that is there already. Its whole quantity is at one stage. */
export interface InitialJob {
  /** Name of a demand stream. */
  readonly stream: string;
  readonly quantity: number;
  readonly rush: boolean;
  /** Zero or negative. */
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
