import type { Lab } from '@buildweek/model';

/** A lab that may be chosen. */
export interface Plan {
  /** How it differs from the others: names it in tables, and in what is kept of a stopped search. */
  readonly name: string;
  readonly lab: Lab;
}
