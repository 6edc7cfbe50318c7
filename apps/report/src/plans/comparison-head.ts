import { formatLevel } from '@buildweek/charts';
import type { ComparisonAnswer } from '@buildweek/results';
import { type Html, html, nameText } from '../html.ts';
import { answerInWords } from '../sections/answer-in-words.ts';
import { cautionLine, fact } from '../sections/head.ts';

/** The top of the page: which plans, and in a sentence each what they change. */
export function comparisonHead(answer: ComparisonAnswer): Html {
  const { run, plans, pairs } = answer;
  return html`
<header class="head">
<div class="inside">
<p class="program">Buildweek · plans compared</p>
<h1>${nameText(plans[0]?.scenario.name ?? '')}: what a change brings</h1>
${answerInWords(pairs.map(({ sentence }) => sentence))}
${cautionLine(answer.cautions, 'At least one plan')}
<dl class="facts">
${fact('Plans', `${plans.length}, each on the same random numbers`)}
${fact('Played', `${run.replications} replications of ${run.weeks} weeks each, seed “${run.seed}”`)}
${fact('Intervals', `of values ${formatLevel(run.level)}; of differences ${formatLevel(answer.differencesLevel)} each, so that all hold at once with ${formatLevel(run.level)} confidence`)}
</dl>
</div>
</header>`;
}
