import { checkLevel } from './checks.ts';
import type { Interval } from './interval.ts';
import { studentInterval } from './mean-interval.ts';

/**
 * Ratios of means over replications, many numerators over one denominator (hours of each step over jobs), in memory
 * that does not grow with the replications. The residuals of `ratioInterval` add up to
 * S(n, n) − 2 r S(n, d) + r² S(d, d), where S are sums of products of deviations from the means, since the mean
 * residual is zero; the sums are updated as in the source named at `RunningMeans`.
 */
export class RunningRatios {
  readonly size: number;
  private readonly centres: Float64Array;
  private readonly squares: Float64Array;
  private readonly products: Float64Array;
  private denominatorCentre = 0;
  private denominatorSquares = 0;
  private count = 0;

  /** @param size how many numerators there are */
  constructor(size: number) {
    this.size = size;
    this.centres = new Float64Array(size);
    this.squares = new Float64Array(size);
    this.products = new Float64Array(size);
  }

  get replications(): number {
    return this.count;
  }

  /** Whether there is a ratio: some denominator was above zero. */
  get hasDenominator(): boolean {
    return this.denominatorCentre > 0;
  }

  /**
   * Takes in one replication.
   * @param numerators one for each measure
   * @param denominator such as the number of jobs
   * @throws RangeError for another number of values, one that is not finite, or a negative denominator
   */
  add(numerators: ArrayLike<number>, denominator: number): void {
    if (numerators.length !== this.size) {
      throw new RangeError(`${this.size} values are needed, not ${numerators.length}`);
    }
    if (!(denominator >= 0 && denominator < Number.POSITIVE_INFINITY)) {
      throw new RangeError(`A denominator cannot be ${denominator}`);
    }
    this.count++;
    const step = denominator - this.denominatorCentre;
    this.denominatorCentre += step / this.count;
    const rest = denominator - this.denominatorCentre;
    this.denominatorSquares += step * rest;
    for (let index = 0; index < this.size; index++) {
      const value = numerators[index] as number;
      if (!Number.isFinite(value)) throw new RangeError(`Value ${index} is not finite: ${value}`);
      const centre = this.centres[index] as number;
      const moved = centre + (value - centre) / this.count;
      this.centres[index] = moved;
      this.squares[index] = (this.squares[index] as number) + (value - centre) * (value - moved);
      this.products[index] = (this.products[index] as number) + (value - centre) * rest;
    }
  }

  /** Mean of one numerator so far; 0 before the first replication. */
  meanOfNumerator(index: number): number {
    return this.centres[index] as number;
  }

  /**
   * Interval of one ratio, as `ratioInterval` gives it.
   * @throws RangeError for fewer than two replications, denominators that are all zero, or unless 0 < level < 1
   */
  interval(index: number, level: number): Interval {
    checkLevel(level);
    if (this.count < 2) throw new RangeError(`At least 2 replications are needed, not ${this.count}`);
    if (!this.hasDenominator) throw new RangeError('All denominators are zero: there is no ratio');
    const value = this.meanOfNumerator(index) / this.denominatorCentre;
    const residuals =
      (this.squares[index] as number) -
      2 * value * (this.products[index] as number) +
      value * value * this.denominatorSquares;
    // Rounding may leave a little less than nothing.
    const variance = Math.max(0, residuals) / (this.count - 1);
    const error = Math.sqrt(variance / this.count) / this.denominatorCentre;
    return studentInterval(value, error, this.count - 1, level);
  }
}
