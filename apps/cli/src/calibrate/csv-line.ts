/** What separates the cells of a line, in the order in which it is looked for. */
const SEPARATORS = ['\t', ';', ','] as const;
export type Separator = (typeof SEPARATORS)[number];

/** Where a cell stands in its line. */
export interface CellPlace {
  /** Counted from 1. */
  readonly column: number;
  readonly length: number;
}

/** The separator of a list, from its header line; commas only where nothing else separates. */
export function separatorOf(header: string): Separator {
  const bare = header.replace(/"[^"]*"/g, '');
  return SEPARATORS.find((separator) => bare.includes(separator)) ?? ',';
}

/** The place of a cell in its line, without spaces around it; the end of the line when there are not so many. */
export function cellPlace(line: string, position: number, separator: Separator): CellPlace {
  let start = 0;
  let isQuoted = false;
  let cell = 0;
  for (let index = 0; index <= line.length; index++) {
    const letter = line[index];
    if (letter === '"') isQuoted = !isQuoted;
    if (letter !== undefined && (letter !== separator || isQuoted)) continue;
    if (cell === position) {
      const text = line.slice(start, index);
      const length = text.trim().length;
      return {
        column: start + 1 + (length === 0 ? 0 : text.indexOf(text.trim())),
        length: Math.max(1, length),
      };
    }
    cell++;
    start = index + 1;
  }
  return { column: line.length + 1, length: 1 };
}
