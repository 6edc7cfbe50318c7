/** Something of a scenario that may be chosen, for the search for a plan. */
export type Variation = CountVariation | WordingVariation;

/** How many machines, stations, people or carriers of a group; from 0 where the lab can do without. */
export interface CountVariation {
  readonly kind: 'count';
  readonly of: 'machines' | 'stations' | 'people' | 'carriers';
  readonly group: string;
  readonly from: number;
  readonly to: number;
}

/** A value of the scenario in other words: other hours of people, another class of machine. */
export interface WordingVariation {
  readonly kind: 'wording';
  /** Keys from the top of the file to the value. */
  readonly path: readonly string[];
  /** The present one is among them. */
  readonly options: readonly string[];
}
