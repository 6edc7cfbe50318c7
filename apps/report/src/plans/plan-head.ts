import type { PlanAnswer } from '@buildweek/results';
import { type Html, html, nameText } from '../html.ts';
import { answerInWords } from '../sections/answer-in-words.ts';
import { cautionLine, fact } from '../sections/head.ts';

/** The top of the page: the question, the answer in words, and how sure it is. */
export function planHead(answer: PlanAnswer): Html {
  return html`
<header class="head">
<div class="inside">
<p class="program">Buildweek · how many of what</p>
<h1>${nameText(answer.scenario.name)}</h1>
${answerInWords(answer.headline)}
${cautionLine(answer.cautions, 'The plan')}
<dl class="facts">
${fact('The question', answer.question)}
${fact('May vary', html`${answer.varied.map(({ what, choices, today }, index) => html`${index === 0 ? '' : '; '}<bdi>${what}</bdi> ${choices} (today ${today})`)}`)}
${fact('How sure', answer.promise)}
</dl>
</div>
</header>`;
}
