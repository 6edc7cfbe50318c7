/**
 * A scenario that is played as a whole study, again and again, and what the intervals of the study should hold.
 */
export interface StudySuite {
  readonly name: string;
  readonly title: string;
  /** The whole scenario file, with how it is to be played; each repetition puts its own seed in place of that. */
  readonly scenario: string;
  /** How many studies are played. */
  readonly repetitions: number;
  /** What the intervals should hold, hours. */
  readonly truth: { readonly meanLeadTime: number; readonly p95LeadTime: number };
}
