import type { Chart } from '@buildweek/charts';

/** A cell of a table: words, or a number with its interval, which stands beside or below it. */
export type Cell = string | { readonly value: string; readonly range: string };

/** A column: its heading, and whether it holds numbers (set to the right). */
export interface GridColumn {
  readonly title: string;
  readonly numeric?: boolean;
}

/** A table with a caption that says what it holds and in which unit; the first cell of a row is its heading. */
export interface Grid {
  readonly kind: 'grid';
  readonly caption: string;
  readonly columns: readonly GridColumn[];
  readonly rows: readonly (readonly Cell[])[];
  /** Why some numbers are not given; cells point at them by number. */
  readonly reasons: readonly string[];
}

/** What a section is made of, for paper and slides alike. All text is text: it is never read as anything else. */
export type Block =
  | { readonly kind: 'lede' | 'note' | 'heading'; readonly text: string }
  | { readonly kind: 'list'; readonly items: readonly string[] }
  | { readonly kind: 'facts'; readonly facts: readonly (readonly [string, string])[] }
  | { readonly kind: 'chart'; readonly chart: Chart }
  | Grid;

export interface Section {
  readonly title: string;
  readonly blocks: readonly Block[];
}
