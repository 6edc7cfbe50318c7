/** A value in the words of a scenario, with where it is from. */
export interface Sourced {
  readonly value: string;
  /** What was counted, and how sure it is; without the `#`. */
  readonly source: string;
}

/** A value with others that fit about as well. */
export interface SourcedChoice extends Sourced {
  readonly others: readonly Sourced[];
}

/** What was learned from a log, in the words of a scenario. */
export interface LearnedWords {
  /** By part. */
  readonly jobs: ReadonlyMap<string, Sourced>;
  /** For all parts; null without a clear trend. */
  readonly growth: Sourced | null;
  readonly rush: ReadonlyMap<string, Sourced>;
  /** When in the week jobs are asked for, for all parts. */
  readonly when: Sourced | null;
  /** How much whole weeks differ, for all parts. */
  readonly weekVariation: Sourced | null;
  /** Time of a print by machine group. */
  readonly prints: ReadonlyMap<string, SourcedChoice>;
  /** The same by part, where builds hold one part alone. */
  readonly partPrints: ReadonlyMap<string, SourcedChoice>;
  /** Share of builds that fail, and how often machines break down, by machine group. */
  readonly fails: ReadonlyMap<string, Sourced>;
  readonly breakdowns: ReadonlyMap<string, Sourced>;
  /** Time of the work on a job by part, then by stage. */
  readonly stages: ReadonlyMap<string, ReadonlyMap<string, SourcedChoice>>;
}
