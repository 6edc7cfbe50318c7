/** Durations that were measured, each equally likely. They are sorted, so that a larger u never draws less. */
export class MeasuredSampler {
  private readonly sorted: Float64Array;

  /** @throws RangeError when there are none */
  constructor(values: readonly number[]) {
    if (values.length === 0) throw new RangeError('A list of measured durations must not be empty.');
    this.sorted = Float64Array.from(values).sort();
  }

  sample(u: number): number {
    // Next to 1, u times the number of values may be rounded up to it.
    return this.sorted[Math.min(Math.floor(u * this.sorted.length), this.sorted.length - 1)];
  }
}
