/** Lengths that differ by less than this are the same: half a micrometre, in mm. Meshes carry rounding of that size. */
export const SAME_LENGTH = 0.0005;

const MICROMETRES_PER_MILLIMETRE = 1000;

/** The nearest whole number of micrometres to a length in mm, so that sums of lengths are exact. */
export function micrometres(length: number): number {
  return Math.round(length * MICROMETRES_PER_MILLIMETRE);
}
