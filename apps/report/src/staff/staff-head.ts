import { formatLevel, formatPlain } from '@buildweek/charts';
import type { StaffAnswer } from '@buildweek/results';
import { type DrawnChart, figure } from '../figure.ts';
import { type Html, html, nameText } from '../html.ts';
import { answerInWords } from '../sections/answer-in-words.ts';
import { cautionLine, fact } from '../sections/head.ts';

/** The top of the page: the question, the answer in words, and what each option changes. */
export function staffHead(answer: StaffAnswer, charts: ReadonlyMap<string, DrawnChart>): Html {
  const { run, plans, rules } = answer;
  const isStated = plans.some(({ origin }) => origin === 'stated in the scenario');
  return html`
<header class="head">
<div class="inside">
<p class="program">Buildweek · people and hours</p>
<h1>Whom to have when: ${nameText(answer.scenarioName)}</h1>
${answerInWords(answer.verdict)}
${figure(charts, 'staff-options')}
${cautionLine(answer.cautions, 'At least one option')}
<dl class="facts">
${fact('Options', `${plans.length - 1}, ${isStated ? 'stated in the scenario' : 'made of the people who are there'}`)}
${fact('Played', `${run.replications} replications of ${run.weeks} weeks each, seed “${run.seed}”, on the same random numbers`)}
${fact('Hours are held against', `${formatPlain(rules.restHours)} h of rest, ${formatPlain(rules.hoursPerWeek)} h a week, ${rules.daysInARow} days in a row; what is lawful is not for a program to say`)}
${fact('Intervals', `of values ${formatLevel(run.level)}; of changes ${formatLevel(answer.differencesLevel)} each, so that those of all options hold at once with ${formatLevel(run.level)} confidence`)}
</dl>
</div>
</header>`;
}
