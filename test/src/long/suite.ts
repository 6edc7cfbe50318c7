/**
 * A statistical test that takes minutes: a scenario is played as a whole study, again and again with another seed, and
 * it is counted how often its intervals hold what they should hold.
 */
export interface Suite {
  /** Names its record and its seeds. */
  readonly name: string;
  /** What is played, with the number of replications, the run length and the start: for the titles of tests. */
  readonly title: string;
  /** The whole scenario file, with how it is to be played; each repetition puts its own seed in place of that. */
  readonly scenario: string;
  /** How many studies are played. */
  readonly repetitions: number;
  /** What the intervals should hold, hours. */
  readonly truth: { readonly meanLeadTime: number; readonly p95LeadTime: number };
}

/** The seed of one repetition. */
export function seedOf(suite: Suite, repetition: number): string {
  return `${suite.name} ${repetition}`;
}
