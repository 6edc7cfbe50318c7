import { formatPlain } from '@buildweek/charts';
import type { PartAnswer } from '@buildweek/results';
import { type DrawnChart, figure } from '../figure.ts';
import { type Html, html, nameText } from '../html.ts';
import { firstSentence, otherSentences } from '../sections/answer-in-words.ts';
import { cautionLine, fact } from '../sections/head.ts';

const MM3_PER_CM3 = 1000;
const MM2_PER_CM2 = 100;

/** So many sentences of the answer stand above the chart, so that one screen holds all three; the others below. */
const SENTENCES_ABOVE = 2;

/** The top of the page: the question, the answer in words, and the chart that shows why. */
export function partHead(answer: PartAnswer, charts: ReadonlyMap<string, DrawnChart>): Html {
  const { part, lab } = answer;
  const [first, ...others] = answer.verdict;
  const volume = `${formatPlain(part.volume / MM3_PER_CM3)}\u00a0cm³`;
  const surface = `${formatPlain(part.surface / MM2_PER_CM2)}\u00a0cm²`;
  return html`
<header class="head">
<div class="inside">
<p class="program">Buildweek · which process for a part</p>
<h1>Which process for the ${nameText(part.name)}?</h1>
${first === undefined ? null : firstSentence(first)}
${otherSentences(others.slice(0, SENTENCES_ABOVE))}
${figure(charts, 'first-choice')}
${otherSentences(others.slice(SENTENCES_ABOVE))}
${cautionLine(answer.cautions, 'At least one way')}
<dl class="facts">
${fact('The part', html`${volume}, surface ${surface}, finish: <bdi>${part.finish}</bdi>`)}
${fact('The lab', lab.isTypical ? html`typical machines (<bdi>${lab.name}</bdi>): no scenario was given` : nameText(lab.name))}
${fact('Asked for on', answer.asked.map((asked) => asked.label).join(', '))}
${fact('Played', `${answer.plays} times, seed “${answer.seed}”, in an empty lab`)}
</dl>
</div>
</header>`;
}
