import { formatShare } from '@buildweek/charts';
import type { ComparisonAnswer } from '@buildweek/results';
import { type Html, html, nameText } from '../html.ts';
import { table } from '../table.ts';

/** Loads of all plans by hand beside each other, and the lead times that formulas give. */
export function comparisonHand({ plans }: ComparisonAnswer): Html {
  const names = [...new Set(plans.flatMap(({ handCalculation }) => handCalculation.map(({ name }) => name)))];
  if (names.length === 0) return html``;
  return html`
<section id="hand" aria-labelledby="hand-title">
<h2 id="hand-title">The same by hand</h2>
<p class="lede">What a page of arithmetic says of each plan: hours asked for over hours available, and a mean lead time
by formulas of queues. It knows nothing of shifts, nights and rush.</p>
<ul class="notes">${plans.map(({ name, handSentence }) => (handSentence === '' ? null : html`<li>${nameText(name)}: ${handSentence}</li>`))}</ul>
${table(
  'hand-table',
  'Load by hand calculation',
  [{ title: 'Resource' }, ...plans.map(({ name }) => ({ title: name, numeric: true }))],
  names.map((resource) => [
    nameText(resource),
    ...plans.map(({ handCalculation }) => {
      const load = handCalculation.find(({ name }) => name === resource);
      return load === undefined ? 'not there' : `${formatShare(load.load)} of ${load.count}`;
    }),
  ]),
)}
</section>`;
}
