import type { Economics, Lab } from '@buildweek/model';

/** A lab that may be chosen. */
export interface Plan {
  /** How it differs from the others: names it in tables, and in what is kept of a stopped search. */
  readonly name: string;
  readonly lab: Lab;
  /** Prices of its lab, where plans of a study may have prices of their own; null: none are stated. */
  readonly economics?: Economics | null;
}
