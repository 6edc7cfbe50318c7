/** How wide a column wants to be, points. */
export interface ColumnWish {
  /** Its longest word. */
  readonly least: number;
  /** Its longest line. */
  readonly most: number;
}

/**
 * Widths of the columns of a table: each has at least its longest word, the rest goes to those that want more, in
 * proportion. Null where even the least does not fit.
 */
export function columnWidths(wishes: readonly ColumnWish[], width: number): number[] | null {
  const least = wishes.reduce((sum, wish) => sum + wish.least, 0);
  const most = wishes.reduce((sum, wish) => sum + wish.most, 0);
  if (least > width) return null;
  if (most <= width) return wishes.map((wish) => wish.most);
  const share = (width - least) / (most - least);
  return wishes.map((wish) => wish.least + share * (wish.most - wish.least));
}

/**
 * The columns of a wide table in groups that each fit, about equally many in each, with the first column, which names
 * the rows, in all of them.
 * @returns positions of columns
 */
export function columnGroups(wishes: readonly ColumnWish[], width: number): number[][] {
  const first = wishes[0]?.least ?? 0;
  const columns = wishes.slice(1).map((wish, at) => ({ at: at + 1, least: wish.least }));
  for (let parts = 2; parts < columns.length; parts++) {
    const size = Math.ceil(columns.length / parts);
    const groups = Array.from({ length: Math.ceil(columns.length / size) }, (_, part) =>
      columns.slice(part * size, (part + 1) * size),
    );
    if (groups.every((group) => group.reduce((sum, { least }) => sum + least, first) <= width)) {
      return groups.map((group) => [0, ...group.map(({ at }) => at)]);
    }
  }
  return columns.map(({ at }) => [0, at]);
}
