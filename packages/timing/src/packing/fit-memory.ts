/** An answer that is remembered. */
export const NOT_KNOWN = 0;
export const DOES_NOT_FIT = 1;
export const FITS = 2;

const MULTIPLIER = 0x9e3779b1;

/**
 * Remembers answers by the counts they are for, in a fixed number of places: a new answer takes the place of an
 * older one that falls on the same. The whole counts are compared, so that no answer is ever given for others.
 */
export class FitMemory {
  private readonly shapeCount: number;
  private readonly mask: number;
  private readonly counts: Int32Array;
  private readonly answers: Uint8Array;
  private place = 0;

  /** @param places a power of two */
  constructor(shapeCount: number, places: number) {
    this.shapeCount = shapeCount;
    this.mask = places - 1;
    this.counts = new Int32Array(shapeCount * places);
    this.answers = new Uint8Array(places);
  }

  /** The answer for the counts, or that none is known. */
  recall(counts: Int32Array): number {
    let hash = 0;
    for (let shape = 0; shape < this.shapeCount; shape++) {
      hash = Math.imul(hash ^ counts[shape], MULTIPLIER);
      hash ^= hash >>> 15;
    }
    this.place = hash & this.mask;
    const start = this.place * this.shapeCount;
    for (let shape = 0; shape < this.shapeCount; shape++) {
      if (this.counts[start + shape] !== counts[shape]) return NOT_KNOWN;
    }
    return this.answers[this.place];
  }

  /** Keeps the answer for the counts that were asked for last. */
  keep(counts: Int32Array, answer: number): void {
    this.counts.set(counts, this.place * this.shapeCount);
    this.answers[this.place] = answer;
  }
}
