/**
 * The shapes of the beta distribution behind PERT, with weight 4 on the mode.
 *
 * Source: D. G. Malcolm, J. H. Roseboom, C. E. Clark, W. Fazar, "Application of a technique for research and
 * development program evaluation", Operations Research 7 (1959), in the form with mean
 * (low + 4 mode + high) / 6 (from memory).
 *
 * @returns both at least 1 and together 6; 3 and 3 when `low` and `high` agree
 */
export function pertShapes(low: number, mode: number, high: number): { a: number; b: number } {
  if (high === low) return { a: 3, b: 3 };
  return { a: 1 + (4 * (mode - low)) / (high - low), b: 1 + (4 * (high - mode)) / (high - low) };
}
