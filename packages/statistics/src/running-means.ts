import { checkLevel } from './checks.ts';
import type { Interval } from './interval.ts';
import { studentInterval } from './mean-interval.ts';

/**
 * Means over replications of many measures at once, in memory that does not grow with the replications. By the
 * updating formula of B. P. Welford, "Note on a method for calculating corrected sums of squares and products",
 * Technometrics 4 (1962), 419–420.
 */
export class RunningMeans {
  readonly size: number;
  private readonly centres: Float64Array;
  private readonly squares: Float64Array;
  private count = 0;

  /** @param size how many measures there are */
  constructor(size: number) {
    this.size = size;
    this.centres = new Float64Array(size);
    this.squares = new Float64Array(size);
  }

  get replications(): number {
    return this.count;
  }

  /**
   * Takes in one replication.
   * @param values one for each measure
   * @throws RangeError for another number of values, or one that is not finite
   */
  add(values: ArrayLike<number>): void {
    if (values.length !== this.size) {
      throw new RangeError(`${this.size} values are needed, not ${values.length}`);
    }
    this.count++;
    for (let index = 0; index < this.size; index++) {
      const value = values[index] as number;
      if (!Number.isFinite(value)) throw new RangeError(`Value ${index} is not finite: ${value}`);
      const centre = this.centres[index] as number;
      const moved = centre + (value - centre) / this.count;
      this.centres[index] = moved;
      this.squares[index] = (this.squares[index] as number) + (value - centre) * (value - moved);
    }
  }

  /** Mean of one measure so far; 0 before the first replication. */
  mean(index: number): number {
    return this.centres[index] as number;
  }

  /**
   * Student's interval of the mean of one measure, as `meanInterval` gives it.
   * @throws RangeError for fewer than two replications, or unless 0 < level < 1
   */
  interval(index: number, level: number): Interval {
    checkLevel(level);
    if (this.count < 2) throw new RangeError(`At least 2 replications are needed, not ${this.count}`);
    const variance = (this.squares[index] as number) / (this.count - 1);
    return studentInterval(this.mean(index), Math.sqrt(variance / this.count), this.count - 1, level);
  }
}
