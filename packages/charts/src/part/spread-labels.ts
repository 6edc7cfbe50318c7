/** Labels that touch each other, and the place that suits them together. */
interface Block {
  readonly members: number;
  readonly place: number;
}

/**
 * Moves labels apart that would cover each other, as little as that needs in the sense of least squares, and keeps
 * them in their room. Less the room that the labels above take, places must not decrease: an isotonic regression.
 * Source: R. E. Barlow et al., Statistical Inference under Order Restrictions, the pool-adjacent-violators algorithm
 * (from memory).
 *
 * @param wanted where each label would stand, CSS pixels from the top, in any order
 * @param gap least distance of two labels
 * @param room height in which they must stand; given up where there are too many labels
 * @returns where each stands, in the order of what was wanted
 */
export function spreadLabels(wanted: readonly number[], gap: number, room: number): number[] {
  const order = wanted.map((_, index) => index).sort((a, b) => (wanted[a] ?? 0) - (wanted[b] ?? 0));
  const blocks: Block[] = [];
  order.forEach((index, rank) => {
    let block: Block = { members: 1, place: (wanted[index] ?? 0) - rank * gap };
    for (let last = blocks.at(-1); last !== undefined && last.place > block.place; last = blocks.at(-1)) {
      const members = last.members + block.members;
      block = { members, place: (last.place * last.members + block.place * block.members) / members };
      blocks.pop();
    }
    blocks.push(block);
  });
  const most = Math.max(0, room - (wanted.length - 1) * gap);
  const places = blocks.flatMap(({ members, place }) =>
    Array.from({ length: members }, () => Math.min(most, Math.max(0, place))),
  );
  const placed = [...wanted];
  order.forEach((index, rank) => {
    placed[index] = (places[rank] ?? 0) + rank * gap;
  });
  return placed;
}
