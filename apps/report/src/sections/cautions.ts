import type { Results } from '@buildweek/results';
import { type Html, html } from '../html.ts';

/** What the plan leaves to the people who are licensed to judge it; said plainly, before the details. */
export function cautions(results: Pick<Results, 'cautions'>): Html {
  if (results.cautions.length === 0) return html``;
  return html`
<section id="cautions" class="cautions" aria-labelledby="cautions-title">
<h2 id="cautions-title">Before this plan is followed</h2>
<dl>${results.cautions.map((caution) => html`<div><dt>${caution.topic}</dt><dd>${caution.text}</dd></div>`)}</dl>
</section>`;
}

/** Warnings of the program about the scenario or the run itself. */
export function warnings(results: Pick<Results, 'warnings'>): Html {
  if (results.warnings.length === 0) return html``;
  return html`
<section id="warnings" class="warnings" aria-labelledby="warnings-title">
<h2 id="warnings-title">Read the numbers with this in mind</h2>
<ul>${results.warnings.map((warning) => html`<li>${warning}</li>`)}</ul>
</section>`;
}
