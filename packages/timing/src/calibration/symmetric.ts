/** A pivot below this share of its diagonal means that the columns cannot be told apart in double precision. */
const SINGULAR = 1e-9;

/**
 * The inverse of a symmetric positive matrix by elimination without exchange, which is stable for such matrices;
 * null when it is singular.
 * Source: N. J. Higham, Accuracy and Stability of Numerical Algorithms, second edition, chapter 10.
 */
export function inverseOfSymmetric(matrix: readonly (readonly number[])[]): number[][] | null {
  const size = matrix.length;
  // With ones on the diagonal, so that the units of the columns do not matter.
  const scales = matrix.map((row, index) => Math.sqrt(row[index]));
  if (scales.some((scale) => !(scale > 0))) return null;
  const rows = matrix.map((row, index) => [
    ...row.map((value, column) => value / (scales[index] * scales[column])),
    ...scales.map((_, column) => (column === index ? 1 : 0)),
  ]);
  for (let pivot = 0; pivot < size; pivot++) {
    const diagonal = rows[pivot][pivot];
    if (diagonal < SINGULAR) return null;
    rows[pivot] = rows[pivot].map((value) => value / diagonal);
    for (let row = 0; row < size; row++) {
      if (row === pivot) continue;
      const factor = rows[row][pivot];
      rows[row] = rows[row].map((value, column) => value - factor * rows[pivot][column]);
    }
  }
  return rows.map((row, index) =>
    row.slice(size).map((value, column) => value / (scales[index] * scales[column])),
  );
}
