import { BinSums } from './bin-sums.ts';

/** Bins side by side from an origin on; what lies outside of them is not counted. */
export class IntervalBins {
  private readonly sums: BinSums;
  private readonly origin: number;
  private readonly width: number;
  private readonly count: number;

  /**
   * @param origin where the first bin begins
   * @param width of each bin, above zero, in the unit of the intervals
   * @param count number of bins
   */
  constructor(origin: number, width: number, count: number) {
    this.origin = origin;
    this.width = width;
    this.count = count;
    this.sums = new BinSums(count);
  }

  clear(): void {
    this.sums.clear();
  }

  /** Adds the interval from `from` to before `to`. */
  add(from: number, to: number, weight: number): void {
    const { width, sums } = this;
    const start = Math.max(0, from - this.origin);
    const end = Math.min(this.count * width, to - this.origin);
    if (!(end > start)) return;
    const first = Math.floor(start / width);
    const last = Math.floor(end / width);
    if (first === last) {
      sums.addToBin(first, weight * (end - start));
      return;
    }
    sums.addToBin(first, weight * ((first + 1) * width - start));
    if (last < this.count) sums.addToBin(last, weight * (end - last * width));
    if (last > first + 1) {
      sums.addChange(first + 1, weight);
      sums.addChange(last, -weight);
    }
  }

  /** @returns for each bin the sum of weight times the length that lies in it */
  totals(): Float64Array {
    return this.sums.totals(this.width);
  }
}
