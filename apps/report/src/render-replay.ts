import type { ReplayAnswer } from '@buildweek/results';
import { resetSVGDefIds } from 'vega';
import { drawnReplayCharts } from './figure.ts';
import { type Html, html, jsonScript, nameText } from './html.ts';
import { pageOf } from './page.ts';
import {
  checkSection,
  leadTimesSection,
  leftOutSection,
  partsSection,
  stagesSection,
  weeksSection,
} from './replay/replay-sections.ts';
import { answerInWords } from './sections/answer-in-words.ts';
import { warnings } from './sections/cautions.ts';
import { fact } from './sections/head.ts';

/**
 * The page that holds a model against what happened: one HTML document that opens from disk and needs nothing else. It
 * holds no code; everything that comes from the scenario or the log is text.
 *
 * @param answer what happened beside what the model expects; it is embedded as JSON
 */
export function renderReplay(answer: ReplayAnswer): string {
  resetSVGDefIds();
  const charts = drawnReplayCharts(answer);
  const { program, run } = answer;
  return pageOf({
    title: 'Does the model do what the lab did?',
    version: program.version,
    head: headOf(answer),
    sections: html`
${weeksSection(charts)}
${leadTimesSection(answer, charts)}
${partsSection(answer, charts)}
${stagesSection(answer)}
${checkSection(answer)}
${leftOutSection(answer)}
${warnings(answer)}
${originSection(answer)}`,
    footer: html`Made by buildweek ${program.version}, seed “${run.seed}”, ${run.replications} replications. All names are those of the
scenario and the log; names of people are not carried over.`,
    data: jsonScript('answer', answer),
  });
}

function headOf({ scenario, verdict, judged, log, run }: ReplayAnswer): Html {
  const learned =
    judged.learnedUntil === null ? null : fact('Learned from the log', `up to ${judged.learnedUntil}`);
  return html`
<header class="head">
<div class="inside">
<p class="program">Buildweek · the model held against the log</p>
<h1>${nameText(scenario.name)}: does the model do what the lab did?</h1>
${answerInWords(verdict)}
<dl class="facts">
${fact('The log', html`${nameText(log.name)}, ${log.from} to ${log.until}`)}
${fact('Judged', `${judged.weeks} weeks from ${judged.from}, ${judged.jobs} jobs`)}
${learned}
${fact('Played', `${run.replications} times with the ${log.jobs} jobs of the log, from ${run.playedFrom}, seed “${run.seed}”`)}
</dl>
</div>
</header>`;
}

function originSection({ program, run, scenario }: ReplayAnswer): Html {
  const facts: readonly (readonly [string, string])[] = [
    ['Program', `${program.name} ${program.version}`],
    ['Seed', run.seed],
    ['Replications', String(run.replications)],
    ['Played weeks', `${run.playedWeeks} from ${run.playedFrom}, empty at the start`],
    ...(run.loggedDurations.length === 0
      ? []
      : [['Durations from the log', run.loggedDurations.join(', ')] as const]),
    ['Scenario, SHA-256', scenario.hash.slice(0, 16)],
  ];
  return html`
<section id="origin" aria-labelledby="origin-title">
<h2 id="origin-title">How this was computed</h2>
<p class="lede">Jobs come when they came, with the pieces and the priority of the log; what the log does not say is drawn
as the scenario has it. How long work takes, what fails and who is absent is drawn anew in each replication.</p>
<dl class="origin">${facts.map(([term, value]) => html`<div><dt>${term}</dt><dd><bdi>${value}</bdi></dd></div>`)}</dl>
<details><summary>The scenario</summary>
<pre role="group" aria-label="Scenario file" tabindex="0"><bdi>${scenario.text}</bdi></pre></details>
</section>`;
}
