const FIRST_CHUNK = 1024;
const LARGEST_CHUNK = 8192;

/**
 * Samples of many replications, eight bytes for each value. A typed array for each replication would cost as much
 * again where a replication has few jobs of a class; here they stand one behind the other in large chunks.
 */
export class SampleStore {
  private readonly chunks: Float64Array[] = [];
  private used = 0;
  /** For each replication: chunk, first value, and the position behind its last value. */
  private readonly places: number[] = [];

  get replications(): number {
    return this.places.length / 3;
  }

  /** Keeps a copy of the sample of the next replication, each value divided by `unit`. */
  add(values: Float64Array, unit: number): void {
    let chunk = this.chunks.at(-1);
    if (chunk === undefined || chunk.length - this.used < values.length) {
      const size = chunk === undefined ? FIRST_CHUNK : Math.min(LARGEST_CHUNK, 2 * chunk.length);
      chunk = new Float64Array(Math.max(size, values.length));
      this.chunks.push(chunk);
      this.used = 0;
    }
    const start = this.used;
    for (const value of values) chunk[this.used++] = value / unit;
    this.places.push(this.chunks.length - 1, start, this.used);
  }

  /** The sample of one replication: a view, not to be changed. */
  sample(replication: number): Float64Array {
    const [chunk = 0, start = 0, end = 0] = this.places.slice(3 * replication, 3 * replication + 3);
    return this.chunks[chunk]?.subarray(start, end) ?? new Float64Array(0);
  }

  /** The samples of all replications, in their order. */
  samples(): Float64Array[] {
    return Array.from({ length: this.replications }, (_, replication) => this.sample(replication));
  }
}
