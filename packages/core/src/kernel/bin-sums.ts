/**
 * Sums over bins of equal width to which intervals with a weight are added in constant time, whatever their
 * length: the two bins in which an interval begins and ends are added to directly, the full bins between by a
 * difference array. Every sum carries the rounding error of its additions along, so that of what was added and
 * taken away again nothing is left but an error of second order; with whole numbers not even that.
 *
 * Source of the error term: D. E. Knuth, "The Art of Computer Programming", volume 2, section 4.2.2, theorem B;
 * A. Neumaier, "Rundungsfehleranalyse einiger Verfahren zur Summation endlicher Summen" (1974) (from memory).
 */
export class BinSums {
  readonly partial: Float64Array;
  private readonly partialError: Float64Array;
  private readonly change: Float64Array;
  private readonly changeError: Float64Array;

  constructor(count: number) {
    this.partial = new Float64Array(count);
    this.partialError = new Float64Array(count);
    this.change = new Float64Array(count + 1);
    this.changeError = new Float64Array(count + 1);
  }

  clear(): void {
    this.partial.fill(0);
    this.partialError.fill(0);
    this.change.fill(0);
    this.changeError.fill(0);
  }

  addToBin(bin: number, value: number): void {
    const { partial, partialError } = this;
    const before = partial[bin];
    const after = before + value;
    partial[bin] = after;
    partialError[bin] += additionError(before, value, after);
  }

  /** From this bin on, every bin is covered by so much more. */
  addChange(bin: number, weight: number): void {
    const { change, changeError } = this;
    const before = change[bin];
    const after = before + weight;
    change[bin] = after;
    changeError[bin] += additionError(before, weight, after);
  }

  totals(width: number): Float64Array {
    const totals = new Float64Array(this.partial.length);
    let covered = 0;
    let coveredError = 0;
    for (let bin = 0; bin < totals.length; bin++) {
      const before = covered;
      covered += this.change[bin];
      coveredError += additionError(before, this.change[bin], covered) + this.changeError[bin];
      totals[bin] = this.partial[bin] + (this.partialError[bin] + (covered + coveredError) * width);
    }
    return totals;
  }
}

/** What was lost when `sum` was rounded from `a + b`. */
function additionError(a: number, b: number, sum: number): number {
  const added = sum - a;
  return a - (sum - added) + (b - added);
}
