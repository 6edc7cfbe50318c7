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
  private readonly count: number;
  /**
   * Sum and error of the bins, one pair for each, then of the changes, one pair for each and one behind the last
   * bin: in one array, because a replication begins with many of these and an array is dear to allocate.
   */
  private readonly pairs: Float64Array;

  constructor(count: number) {
    this.count = count;
    this.pairs = new Float64Array(2 * count + 2 * (count + 1));
  }

  clear(): void {
    this.pairs.fill(0);
  }

  addToBin(bin: number, value: number): void {
    this.add(2 * bin, value);
  }

  /** From this bin on, every bin is covered by so much more. */
  addChange(bin: number, weight: number): void {
    this.add(2 * (this.count + bin), weight);
  }

  totals(width: number): Float64Array {
    const { pairs, count } = this;
    const totals = new Float64Array(count);
    let covered = 0;
    let coveredError = 0;
    for (let bin = 0; bin < count; bin++) {
      const before = covered;
      const change = pairs[2 * (count + bin)];
      covered += change;
      coveredError += additionError(before, change, covered) + pairs[2 * (count + bin) + 1];
      totals[bin] = pairs[2 * bin] + (pairs[2 * bin + 1] + (covered + coveredError) * width);
    }
    return totals;
  }

  private add(pair: number, value: number): void {
    const { pairs } = this;
    const before = pairs[pair];
    const after = before + value;
    pairs[pair] = after;
    pairs[pair + 1] += additionError(before, value, after);
  }
}

/** What was lost when `sum` was rounded from `a + b`. */
function additionError(a: number, b: number, sum: number): number {
  const added = sum - a;
  return a - (sum - added) + (b - added);
}
