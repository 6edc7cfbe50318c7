/**
 * Quantities at which curves are played: those that were asked for, and about seven in every factor of ten between
 * one and the largest.
 */
export function quantityGrid(asked: readonly number[]): number[] {
  const largest = Math.max(1, ...asked);
  const grid = new Set<number>([1, ...asked]);
  for (let step = 1; ; step++) {
    const quantity = Math.round(10 ** (step / 7));
    if (quantity >= largest) break;
    grid.add(quantity);
  }
  return [...grid].sort((a, b) => a - b);
}
