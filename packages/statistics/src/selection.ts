/** So few values are gathered and sorted outright. */
const FEW = 256;

/**
 * The value of a rank in many sorted samples taken together, without merging them: the range of values is
 * halved until few are left. Time grows with the number of samples and the logarithm of their size, and two
 * whole numbers for each sample are the only memory.
 * @param samples each ascending and finite
 * @param rank counted from 1; at most the number of all values
 */
export function selectAcross(samples: readonly Float64Array[], rank: number): number {
  const from = new Int32Array(samples.length);
  const to = Int32Array.from(samples, (sample) => sample.length);
  const middle = new Int32Array(samples.length);
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  let left = 0;
  for (const sample of samples) {
    if (sample.length === 0) continue;
    low = Math.min(low, sample[0] as number);
    high = Math.max(high, sample[sample.length - 1] as number);
    left += sample.length;
  }
  let wanted = rank;
  while (left > FEW) {
    const pivot = low + (high - low) / 2;
    // Neighbouring doubles, or one value many times over: there is nothing left to halve.
    if (!(pivot > low && pivot < high)) break;
    let below = 0;
    for (let index = 0; index < samples.length; index++) {
      const cut = upperBound(
        samples[index] as Float64Array,
        pivot,
        from[index] as number,
        to[index] as number,
      );
      middle[index] = cut;
      below += cut - (from[index] as number);
    }
    if (below >= wanted) {
      to.set(middle);
      left = below;
      high = pivot;
    } else {
      from.set(middle);
      left -= below;
      wanted -= below;
      low = pivot;
    }
  }
  return gather(samples, from, to, left)[wanted - 1] as number;
}

function gather(
  samples: readonly Float64Array[],
  from: Int32Array,
  to: Int32Array,
  left: number,
): Float64Array {
  const rest = new Float64Array(left);
  let filled = 0;
  samples.forEach((sample, index) => {
    const part = sample.subarray(from[index], to[index]);
    rest.set(part, filled);
    filled += part.length;
  });
  return rest.sort();
}

/** Index of the first value above the pivot, within [from, to) of a sorted sample. */
export function upperBound(sample: Float64Array, pivot: number, from: number, to: number): number {
  let low = from;
  let high = to;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((sample[middle] as number) <= pivot) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Index of the first value that is not below the pivot in a sorted sample. */
export function lowerBound(sample: Float64Array, pivot: number): number {
  let low = 0;
  let high = sample.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((sample[middle] as number) < pivot) low = middle + 1;
    else high = middle;
  }
  return low;
}
