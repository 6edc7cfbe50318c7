import { oneSidedConfidence, shareConfidence, skewedConfidence } from '@buildweek/statistics';
import type { TargetObservation } from './observation.ts';

/** Confidences that what is asked for is met, and that it is missed; each one-sided. */
export interface Confidence {
  readonly met: number;
  readonly missed: number;
}

/** What the replications of a study say of one target, one after the other. */
export class TargetSeries {
  readonly numerators: number[] = [];
  readonly denominators: number[] = [];
  private readonly values: number[] = [];
  /** Replications with a value of at least 0. */
  reached = 0;

  get replications(): number {
    return this.values.length;
  }

  /** Whether any job or hour of the kind that is meant was there at all. */
  get isEmpty(): boolean {
    return this.denominators.every((denominator) => denominator === 0);
  }

  add({ numerator, denominator, value }: TargetObservation): void {
    this.numerators.push(numerator);
    this.denominators.push(denominator);
    this.values.push(value);
    if (value >= 0) this.reached++;
  }

  /** For a share of periods, exactly. */
  confidenceOfChance(chance: number): Confidence {
    const { atLeast, atMost } = shareConfidence(this.reached, this.replications, chance);
    return { met: atLeast, missed: atMost };
  }

  /**
   * For a ratio in the long run, from the values: that of Student or that for values that lean to one side, whichever
   * is less.
   */
  confidenceOfMean(): Confidence {
    const student = oneSidedConfidence(this.values);
    const skewed = skewedConfidence(this.values);
    return { met: Math.min(student, skewed), missed: 1 - Math.max(student, skewed) };
  }

  /**
   * For a share in the long run. Where every job of every replication did the same, their spread says nothing of what
   * is rare, and a bound holds that needs none: n independent shares from 0 to 1 with a mean of at most p are all 1 with
   * a probability of at most p to the n (Markov's inequality for each).
   *
   * @param bound whether at least, or at most, this share is asked for
   */
  confidenceOfShare(bound: 'at least' | 'at most', share: number): Confidence {
    const { met, missed } = this.confidenceOfMean();
    const counted = this.denominators.filter((denominator) => denominator > 0).length;
    const is = (all: (numerator: number, denominator: number) => boolean): boolean =>
      this.numerators.every((numerator, index) => all(numerator, this.denominators[index] ?? 0));
    const above = is((numerator, denominator) => numerator === denominator) ? 1 - share ** counted : 1;
    const below = is((numerator) => numerator === 0) ? 1 - (1 - share) ** counted : 1;
    return bound === 'at least'
      ? { met: Math.min(met, above), missed: Math.min(missed, below) }
      : { met: Math.min(met, below), missed: Math.min(missed, above) };
  }
}
