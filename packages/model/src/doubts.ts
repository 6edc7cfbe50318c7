/** What of a lab may be in doubt. Names are those of the lab; null stands for all. */
export type DoubtSubject =
  /** How many jobs come; the name of a demand stream. */
  | { readonly kind: 'demand'; readonly of: string | null }
  /** How long people take: for everything, for what asks for a skill, or how long a stage takes. */
  | { readonly kind: 'work times'; readonly by: 'everything' }
  | { readonly kind: 'work times'; readonly by: 'skill' | 'stage'; readonly of: string }
  /** How long machines of a group print. */
  | { readonly kind: 'print times'; readonly of: string | null }
  /** How often machines or stations of a group break down. */
  | { readonly kind: 'breakdowns'; readonly of: string | null }
  /** How often builds of a machine group fail. */
  | { readonly kind: 'failed builds'; readonly of: string | null }
  /** Which share of the pieces of a part type is found bad. */
  | { readonly kind: 'rejects'; readonly of: string | null }
  /** How often people of a group are absent. */
  | { readonly kind: 'absence'; readonly of: string | null }
  /** Which share of the jobs of a demand stream is rush. */
  | { readonly kind: 'share of rush'; readonly of: string | null };

/** A factor on what the scenario says, 1 for as it is said. */
export interface FactorRange {
  readonly low: number;
  /** What is thought most probable. */
  readonly typical: number;
  readonly high: number;
}

/** Something that is not known for certain, and how far from what the scenario says it may lie. */
export interface Doubt extends FactorRange {
  /** As it was written: `times of hand work`. */
  readonly name: string;
  readonly about: DoubtSubject;
}
