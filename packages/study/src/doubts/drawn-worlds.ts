import { createStream } from '@buildweek/core';
import type { Doubt, FactorRange, Lab } from '@buildweek/model';
import { betaQuantile } from '@buildweek/numbers';
import type { Worlds } from '../plans/observed-plans.ts';
import { applyDoubt } from './changes/apply-doubt.ts';

/**
 * Worlds in which what is in doubt turned out one way or another: one world for each replication, each factor drawn
 * from PERT over its range by a stream of its own, which no lab draws from.
 * Source: R. R. Barton, B. L. Nelson and W. Xie, "Quantifying input uncertainty via simulation confidence intervals",
 * INFORMS Journal on Computing 26 (2014), for the principle (from memory).
 */
export class DrawnWorlds implements Worlds {
  readonly name = 'drawn worlds';
  private readonly lab: Lab;
  private readonly doubts: readonly Doubt[];
  private readonly seed: string;

  constructor(lab: Lab, doubts: readonly Doubt[], seed: string) {
    this.lab = lab;
    this.doubts = doubts;
    this.seed = seed;
  }

  /** One factor for each doubt. */
  factorsOf(replication: number): number[] {
    return this.doubts.map((doubt) =>
      drawnFactor(doubt, createStream(this.seed, replication, 'doubt', doubt.name)()),
    );
  }

  labOf(replication: number): Lab {
    const factors = this.factorsOf(replication);
    return this.doubts.reduce(
      (lab, { about }, index) => applyDoubt(lab, about, factors[index] ?? 1),
      this.lab,
    );
  }
}

/**
 * A factor from its PERT distribution with weight 4 on the typical value, by inversion.
 * Source: D. G. Malcolm, J. H. Roseboom, C. E. Clark, W. Fazar, "Application of a technique for research and
 * development program evaluation", Operations Research 7 (1959), in the form with mean (low + 4 typical + high) / 6
 * (from memory).
 * @param u strictly between 0 and 1
 */
export function drawnFactor({ low, typical, high }: FactorRange, u: number): number {
  const width = high - low;
  if (width === 0) return low;
  return low + width * betaQuantile(u, 1 + (4 * (typical - low)) / width, 1 + (4 * (high - typical)) / width);
}
