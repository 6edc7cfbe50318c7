/**
 * Widths of columns that have to share a line: as wide as they would like to be, or, where there is no room for that,
 * narrower, those first that can best spare it. Null when that does not help either.
 *
 * @param liked widths in letters
 * @param least what each column needs
 * @param room letters for all columns, without the gaps between them
 */
export function columnWidths(
  liked: readonly number[],
  least: readonly number[],
  room: number,
): readonly number[] | null {
  const widths = [...liked];
  let excess = widths.reduce((sum, width) => sum + width, 0) - room;
  while (excess > 0) {
    const spare = widths.map((width, index) => width - (least[index] ?? width));
    const most = Math.max(...spare);
    if (most <= 0) return null;
    const index = spare.indexOf(most);
    widths[index] = (widths[index] ?? 0) - 1;
    excess--;
  }
  return widths;
}
