import { keptTogether } from '@buildweek/charts';
import type { DecisionAnswer } from '@buildweek/results';
import { type Html, html, nameText } from '../html.ts';

/** So many reasons stand on the first screen, beside how sure the plan is. */
const FIRST_REASONS = 2;

/** Reasons for the first screen: what it brings and costs, and how sure it is; and the others, most important first. */
function partedReasons({ reasons, doubts }: DecisionAnswer): {
  readonly first: readonly string[];
  readonly others: readonly string[];
} {
  const [surety] = doubts?.verdict ?? [];
  const brought = reasons.filter((reason) => doubts?.verdict.includes(reason) !== true);
  const first = [...brought.slice(0, FIRST_REASONS), ...(surety === undefined ? [] : [surety])];
  return { first, others: reasons.filter((reason) => !first.includes(reason)) };
}

/** The most important reasons, without a heading; nothing where there are none. */
export function firstReasons(answer: DecisionAnswer): Html | null {
  const { first } = partedReasons(answer);
  if (first.length === 0) return null;
  return html`<ul class="first-reasons">${first.map((reason) => html`<li>${nameText(keptTogether(reason))}</li>`)}</ul>`;
}

/** What else speaks for it, and how sure it is, in sentences, the most important first. */
export function reasonsSection(answer: DecisionAnswer): Html {
  const { others } = partedReasons(answer);
  if (others.length === 0) return html``;
  return html`
<section id="why" aria-labelledby="why-title">
<h2 id="why-title">Why this plan, and how sure</h2>
<ul class="answers">${others.map((reason) => html`<li>${nameText(keptTogether(reason))}</li>`)}</ul>
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
