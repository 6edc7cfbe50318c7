import { formatLevel } from '@buildweek/charts';
import type { ComparisonAnswer } from '@buildweek/results';
import { type Html, html, nameText } from '../html.ts';
import { cautionLine, fact, keptTogether, LONG_ANSWER } from '../sections/head.ts';

/** The top of the page: which plans, and in a sentence each what they change. */
export function comparisonHead(answer: ComparisonAnswer): Html {
  const { run, plans, pairs } = answer;
  const [first, ...others] = pairs.map(({ sentence }) => keptTogether(sentence));
  return html`
<header class="head">
<div class="inside">
<p class="program">Buildweek · plans compared</p>
<h1>${nameText(plans[0]?.scenario.name ?? '')}: what a change brings</h1>
${first === undefined ? null : html`<p class="answer ${first.length > LONG_ANSWER ? 'long' : 'short'}">${nameText(first)}</p>`}
${others.length === 0 ? null : html`<ul class="answers">${others.map((sentence) => html`<li>${nameText(sentence)}</li>`)}</ul>`}
${cautionLine(answer.cautions, 'At least one plan')}
<dl class="facts">
${fact('Plans', `${plans.length}, each on the same random numbers`)}
${fact('Played', `${run.replications} replications of ${run.weeks} weeks each, seed “${run.seed}”`)}
${fact('Intervals', `of values ${formatLevel(run.level)}; of differences ${formatLevel(answer.differencesLevel)} each, so that all hold at once with ${formatLevel(run.level)} confidence`)}
</dl>
</div>
</header>`;
}
