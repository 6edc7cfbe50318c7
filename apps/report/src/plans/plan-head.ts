import type { PlanAnswer } from '@buildweek/results';
import { type Html, html, nameText } from '../html.ts';
import { cautionLine, fact, keptTogether, LONG_ANSWER } from '../sections/head.ts';

/** The top of the page: the question, the answer in words, and how sure it is. */
export function planHead(answer: PlanAnswer): Html {
  const [first, ...others] = answer.headline.map(keptTogether);
  return html`
<header class="head">
<div class="inside">
<p class="program">Buildweek · how many of what</p>
<h1>${nameText(answer.scenario.name)}</h1>
${first === undefined ? null : html`<p class="answer ${first.length > LONG_ANSWER ? 'long' : 'short'}">${nameText(first)}</p>`}
${others.length === 0 ? null : html`<ul class="answers">${others.map((sentence) => html`<li>${nameText(sentence)}</li>`)}</ul>`}
${cautionLine(answer.cautions, 'The plan')}
<dl class="facts">
${fact('The question', answer.question)}
${fact('May vary', html`${answer.varied.map(({ what, choices, today }, index) => html`${index === 0 ? '' : '; '}<bdi>${what}</bdi> ${choices} (today ${today})`)}`)}
${fact('How sure', answer.promise)}
</dl>
</div>
</header>`;
}
