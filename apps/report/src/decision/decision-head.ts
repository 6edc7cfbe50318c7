import { keptTogether } from '@buildweek/charts';
import type { DecisionAnswer } from '@buildweek/results';
import { type DrawnChart, figure } from '../figure.ts';
import { type Html, html, nameText } from '../html.ts';
import { cautionLine } from '../sections/head.ts';
import { keyCards } from './key-cards.ts';
import { firstReasons } from './reasons-section.ts';

/** Letters from which on the proposal is set smaller. */
const LONG_PROPOSAL = 110;

/** The first screen: the question, what is proposed, the numbers that matter, and the chart that shows why. */
export function decisionHead(answer: DecisionAnswer, charts: ReadonlyMap<string, DrawnChart>): Html {
  const proposal = keptTogether(answer.proposal);
  return html`
<header class="head decision">
<div class="inside">
<p class="program">Buildweek · decision for ${nameText(answer.scenarioName)}</p>
<p class="question">${nameText(keptTogether(answer.question))}</p>
<h1 class="${proposal.length > LONG_PROPOSAL ? 'proposal long' : 'proposal'}">${nameText(proposal)}</h1>
${cautionLine(answer.cautions, 'The plan')}
<div class="proof">
${keyCards(answer)}
<div>${figure(charts, 'options', true)}
${firstReasons(answer)}</div>
</div>
</div>
</header>`;
}
