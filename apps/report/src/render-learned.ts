import type { LearnedAnswer } from '@buildweek/results';
import { resetSVGDefIds } from 'vega';
import { drawnLearnedCharts } from './figure.ts';
import { type Html, html, jsonScript, nameText } from './html.ts';
import {
  arrivalsSection,
  durationsSection,
  ratesSection,
  readingSection,
  valuesSection,
} from './learned/learned-sections.ts';
import { pageOf } from './page.ts';
import { answerInWords } from './sections/answer-in-words.ts';
import { fact } from './sections/head.ts';

/**
 * The page of what was learned from a lab's own log: one HTML document that opens from disk and needs nothing else. It
 * holds no code; everything that comes from the log is text, and names of people are not in it.
 *
 * @param answer what was read and learned; it is embedded as JSON
 */
export function renderLearned(answer: LearnedAnswer): string {
  resetSVGDefIds();
  const charts = drawnLearnedCharts(answer);
  const { program } = answer;
  return pageOf({
    title: 'What the log of the lab says',
    version: program.version,
    head: headOf(answer),
    sections: html`
${valuesSection(answer)}
${arrivalsSection(answer, charts)}
${durationsSection(answer, charts)}
${ratesSection(answer, charts)}
${readingSection(answer)}
${scenarioSection(answer)}`,
    footer: html`Made by buildweek ${program.version}. All names are those of the log.`,
    data: jsonScript('answer', answer),
  });
}

function headOf({ reading, verdict, learnedUntil }: LearnedAnswer): Html {
  const { requests, machines, from, until, weeks, zone } = reading;
  return html`
<header class="head">
<div class="inside">
<p class="program">Buildweek · learned from the log</p>
<h1>${nameText(requests.file)}: what the log of the lab says</h1>
${answerInWords(verdict)}
<dl class="facts">
${fact('The log', `${requests.kept} jobs, ${from} to ${until.slice(0, 10)}, ${Math.round(weeks)} weeks`)}
${machines === null ? null : fact('Machines', html`${machines.kept} runs in <bdi>${machines.file}</bdi>`)}
${fact('Learned', `up to ${learnedUntil}`)}
${fact('Clock', zone === null ? 'as it is written' : `of ${zone}`)}
</dl>
</div>
</header>`;
}

function scenarioSection({ scenario }: LearnedAnswer): Html {
  return html`
<section id="scenario" aria-labelledby="scenario-title">
<h2 id="scenario-title">The scenario that comes of it</h2>
<p class="lede">What is marked “not in the log” is common practice: correct it first.</p>
<details><summary>The scenario</summary>
<pre role="group" aria-label="Scenario file" tabindex="0"><bdi>${scenario}</bdi></pre></details>
</section>`;
}
