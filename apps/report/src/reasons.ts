import { type Html, html } from './html.ts';

/** Gathers the reasons why numbers of a table are not given, so that a cell needs only a mark. */
export class Reasons {
  private readonly reasons: string[] = [];

  /** The number of a reason; the same reason has the same number. */
  numberOf(reason: string): number {
    const known = this.reasons.indexOf(reason);
    if (known >= 0) return known + 1;
    return this.reasons.push(reason);
  }

  /** The list of reasons under the table. */
  list(): Html {
    if (this.reasons.length === 0) return html``;
    return html`<ol class="reasons" aria-label="Why some numbers are not given">${this.reasons.map((reason) => html`<li>${reason}</li>`)}</ol>`;
  }
}
