/** How far a study has come. */
export interface StudyProgress {
  /** The pilot finds the ignored weeks; the replications are what is reported. */
  readonly stage: 'pilot' | 'replications';
  readonly done: number;
  readonly total: number;
  /** Whether it may end before `total`, because a precision is reached. */
  readonly mayEndSooner: boolean;
}
