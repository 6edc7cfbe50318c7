import { type Content, type Html, html } from './html.ts';

/** A column: its heading, and whether it holds numbers (set to the right). */
export interface Column {
  readonly title: Content;
  readonly numeric?: boolean;
}

/** A row: the first cell is its heading. */
export type Row = readonly Content[];

/** So many columns fit a telephone. */
const FITTING_COLUMNS = 3;

/**
 * A table with a caption, in a frame that can be scrolled by keyboard where it is wider than the page.
 *
 * @param id unique in the page
 * @param caption what the table holds, with the unit
 * @param columns headings
 * @param rows cells, as many as there are columns
 * @param dense many columns: intervals stand below their values
 */
export function table(
  id: string,
  caption: string,
  columns: readonly Column[],
  rows: readonly Row[],
  dense = false,
): Html {
  const cell = (content: Content, index: number): Html => {
    const kind = columns[index]?.numeric === true ? 'number' : 'words';
    return index === 0 ? html`<th scope="row">${content}</th>` : html`<td class="${kind}">${content}</td>`;
  };
  return html`${
    columns.length > FITTING_COLUMNS
      ? html`
<p class="sideways" aria-hidden="true">Wide table: move it sideways ↔</p>`
      : null
  }
<div class="scroll" role="group" aria-labelledby="${id}" tabindex="0">
<table class="${dense ? 'dense' : 'plain'}">
<caption id="${id}">${caption}</caption>
<thead><tr>${columns.map((column) => html`<th scope="col" class="${column.numeric === true ? 'number' : 'words'}">${column.title}</th>`)}</tr></thead>
<tbody>
${rows.map((row) => html`<tr>${row.map(cell)}</tr>\n`)}</tbody>
</table>
</div>`;
}
