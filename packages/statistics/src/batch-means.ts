import { mean } from './summary.ts';

/**
 * Means of consecutive batches of equal size. Values at the end that fill no batch are left out.
 * @param batchSize a whole number of at least 1
 * @throws RangeError when the size is something else, or the series is shorter than one batch
 */
export function batchMeans(series: ArrayLike<number>, batchSize: number): Float64Array {
  const batches = Math.floor(series.length / batchSize);
  if (!(Number.isInteger(batchSize) && batchSize >= 1 && batches >= 1)) {
    throw new RangeError(`${series.length} values cannot be cut into batches of ${batchSize}`);
  }
  const values = Float64Array.from(series);
  return Float64Array.from({ length: batches }, (_, batch) =>
    mean(values.subarray(batch * batchSize, (batch + 1) * batchSize)),
  );
}
