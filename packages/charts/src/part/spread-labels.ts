/**
 * Moves labels apart that would cover each other, as little as that needs, and keeps them in their room.
 *
 * @param wanted where each label would stand, CSS pixels from the top, in any order
 * @param gap least distance of two labels
 * @param room height in which they must stand; given up where there are too many labels
 * @returns where each stands, in the order of what was wanted
 */
export function spreadLabels(wanted: readonly number[], gap: number, room: number): number[] {
  const order = wanted.map((_, index) => index).sort((a, b) => (wanted[a] ?? 0) - (wanted[b] ?? 0));
  const placed = [...wanted];
  let least = 0;
  for (const index of order) {
    placed[index] = Math.max(placed[index] ?? 0, least);
    least = (placed[index] ?? 0) + gap;
  }
  let most = room;
  for (const index of [...order].reverse()) {
    placed[index] = Math.min(placed[index] ?? 0, most);
    most = (placed[index] ?? 0) - gap;
  }
  const [top] = order;
  const lift = top === undefined ? 0 : Math.min(0, placed[top] ?? 0);
  return placed.map((one) => one - lift);
}
