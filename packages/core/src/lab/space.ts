/** Share by which sums of space may be off through rounding: 24 pieces of 1/24 fill a platform. */
export const SPACE_TOLERANCE = 1e-9;

/** What may go into a capacity, rounding allowed for: by a share of it, since volumes are millions of mm3. */
export function roomIn(capacity: number): number {
  return capacity * (1 + SPACE_TOLERANCE);
}
