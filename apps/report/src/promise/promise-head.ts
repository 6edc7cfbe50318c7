import { formatLevel } from '@buildweek/charts';
import { momentText, type PromiseAnswer } from '@buildweek/results';
import { type Html, html, nameText } from '../html.ts';
import { answerInWords } from '../sections/answer-in-words.ts';
import { cautionLine, fact } from '../sections/head.ts';

/** The top of the page: what is asked, and the answer in words. */
export function promiseHead(answer: PromiseAnswer): Html {
  const { scenario, run, verdict, cautions, request, now, jobsInLab } = answer;
  const question =
    request === null
      ? 'the jobs in the lab'
      : html`${request.request.quantity} × ${nameText(request.request.part)}${request.request.rush ? ', rush' : ''}`;
  return html`
<header class="head">
<div class="inside">
<p class="program">Buildweek · when it will be ready</p>
<h1>${nameText(scenario.name)}: ${question}</h1>
${answerInWords(verdict)}
${cautionLine(cautions, 'The plan')}
<dl class="facts">
${fact('Now', momentText(now))}
${fact('In the lab', jobsInLab === 1 ? 'one job' : `${jobsInLab} jobs`)}
${fact('Played', `${run.replications} times from this state, seed “${run.seed}”`)}
${fact('Intervals', `hold with ${formatLevel(run.level)} confidence`)}
</dl>
</div>
</header>`;
}
