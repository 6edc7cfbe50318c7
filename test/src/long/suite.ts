/**
 * A statistical test that takes minutes: a procedure is used again and again, each time with another seed, and it is
 * counted how often it comes out right.
 */
export interface Suite {
  /** Names its record and its seeds. */
  readonly name: string;
  /** What is played, with the number of replications, the run length and the start: for the titles of tests. */
  readonly title: string;
  /** How often the procedure is used. */
  readonly repetitions: number;
  /** Everything that decides what is played and how it is judged, as plain data: part of the digest of a record. */
  readonly played: readonly unknown[];
  /** Names of what stands in a line of the record, in their order. */
  readonly columns: string;
  /** Makes ready to play; called once on each core. */
  createPlayer(): Player;
  /**
   * @throws Error when it is no line of this repetition, or one that contradicts itself
   */
  check(line: string, repetition: number): void;
  /** What a whole record says. */
  verdicts(lines: readonly string[]): Verdict[];
}

/** Plays repetitions of a suite. */
export interface Player {
  /**
   * @param repetition from 0; gives the seed
   * @returns the line that stands in the record
   */
  play(repetition: number): Promise<string>;
}

/** One thing that was counted, and whether chance allows it. */
export interface Verdict {
  readonly isWithin: boolean;
  /** For a reader. */
  readonly words: string;
}

/** The seed of one repetition. */
export function seedOf(suite: { readonly name: string }, repetition: number): string {
  return `${suite.name} ${repetition}`;
}

/** Said wherever a record does not fit. */
export const HOW_TO_RECORD = 'If that is meant, record anew with "npm run test:long"; never edit a record.';

/**
 * @param seed as it stands in a line
 * @throws Error when it is not that of the repetition
 */
export function checkSeed(suite: { readonly name: string }, repetition: number, seed: string): void {
  const wanted = seedOf(suite, repetition);
  if (seed !== wanted) {
    throw new Error(`The record of ${suite.name} has "${seed}" in place of "${wanted}". ${HOW_TO_RECORD}`);
  }
}
