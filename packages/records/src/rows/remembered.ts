/** No table has more different words; texts that are all different are not worth remembering. */
const MOST = 20_000;

/**
 * Answers to the same cell, which comes again and again: a word of a log is made out once, and all rows share it.
 * Texts that are cut out of a large one would keep it in memory.
 */
export function remembered<Answer>(answer: (cell: string) => Answer): (cell: string) => Answer {
  const known = new Map<string, Answer>();
  return (cell) => {
    const before = known.get(cell);
    if (before !== undefined) return before;
    const found = answer(cell);
    if (known.size < MOST) known.set(cell, found);
    return found;
  };
}
