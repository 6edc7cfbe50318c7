/** Customers of one run, put into equal batches one after the other: their means are nearly independent. */
export class BatchMeans {
  private readonly sums: Float64Array;
  private readonly size: number;
  private batch = 0;
  private count = 0;

  /** @param total values that will come; what does not fill a batch is left out */
  constructor(total: number, batches: number) {
    this.sums = new Float64Array(batches);
    this.size = Math.floor(total / batches);
  }

  add(value: number): void {
    if (this.batch === this.sums.length) return;
    this.sums[this.batch] += value;
    if (++this.count === this.size) {
      this.count = 0;
      this.batch++;
    }
  }

  /** @returns mean of every batch, each divided by `unit` */
  means(unit: number): number[] {
    return Array.from(this.sums, (sum) => sum / this.size / unit);
  }
}
