import { keptTogether } from '@buildweek/charts';
import type { DecisionAnswer } from '@buildweek/results';
import { type Html, html, nameText } from '../html.ts';

/** Why this is proposed, in sentences, the most important first. */
export function reasonsSection({ reasons }: DecisionAnswer): Html {
  if (reasons.length === 0) return html``;
  return html`
<section id="why" aria-labelledby="why-title">
<h2 id="why-title">Why, and how sure</h2>
<ul class="answers">${reasons.map((reason) => html`<li>${nameText(keptTogether(reason))}</li>`)}</ul>
</section>`;
}

/** How the plan was found, and what that promises. */
export function foundSection({ search }: DecisionAnswer): Html {
  if (search === null) return html``;
  return html`
<section id="found" aria-labelledby="found-title">
<h2 id="found-title">How the plan was found</h2>
<p class="lede">${search.question}</p>
<ul class="notes">
<li>${search.promise}</li>
<li>May vary: ${search.varied.map(({ what, choices, today }, index) => html`${index === 0 ? '' : '; '}<bdi>${what}</bdi> ${choices} (today ${today})`)}.</li>
<li>${search.plans} plans: ${search.looked.length} were played, ${search.ruledOut.reduce((sum, { plans }) => sum + plans, 0)} ruled out beforehand because they cannot meet the targets whatever luck they have, ${search.notLookedAt} are dearer than the answer. ${search.run.replications} replications in all.</li>
<li>${search.handSentence}</li>
</ul>
</section>`;
}
