import type { BuildColumn } from '@buildweek/study';
import { BUILD_COLUMNS } from '@buildweek/study';

/** Names of the columns that are taken for one of ours, in small letters. */
const SYNONYMS: Readonly<Record<BuildColumn, readonly string[]>> = {
  build: ['build', 'builds', 'build number', 'build no', 'build name', 'build id', 'print', 'run'],
  part: ['part', 'parts', 'part type', 'part name'],
  pieces: ['pieces', 'piece', 'number of pieces', 'number', 'count', 'quantity', 'qty', 'copies'],
  hours: ['hours', 'print hours', 'print time', 'printing time', 'measured hours', 'time', 'duration', 'h'],
};

/** The columns of a list: where each of ours is, and what is wrong with the header line. */
export interface FoundColumns {
  readonly positions: Readonly<Partial<Record<BuildColumn, number>>>;
  readonly missing: readonly BuildColumn[];
  /** Positions of titles for a column that is there already. */
  readonly repeated: readonly { readonly position: number; readonly column: BuildColumn }[];
  /** Titles of columns that are not used. */
  readonly unused: readonly string[];
}

/** @param titles of the header line */
export function foundColumns(titles: readonly string[]): FoundColumns {
  const positions: Partial<Record<BuildColumn, number>> = {};
  const repeated: { position: number; column: BuildColumn }[] = [];
  const unused: string[] = [];
  titles.forEach((title, position) => {
    const column = columnOf(title);
    if (column === null) {
      if (title !== '') unused.push(title);
    } else if (positions[column] === undefined) positions[column] = position;
    else repeated.push({ position, column });
  });
  return {
    positions,
    missing: BUILD_COLUMNS.filter((column) => positions[column] === undefined),
    repeated,
    unused,
  };
}

/** Case, underscores and a unit of hours behind the title do not matter. */
function columnOf(title: string): BuildColumn | null {
  const plain = title
    .toLowerCase()
    .replace(/[\s_-]+/g, ' ')
    .replace(/\s*[([](h|hours)[)\]]$/, '')
    .trim();
  return BUILD_COLUMNS.find((column) => SYNONYMS[column].includes(plain)) ?? null;
}
