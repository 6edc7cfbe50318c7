import type { PromiseAnswer } from '@buildweek/results';
import { resetSVGDefIds } from 'vega';
import { drawnPromiseCharts } from './figure.ts';
import { type Html, html, jsonScript } from './html.ts';
import { pageOf } from './page.ts';
import { daySection, openJobsSection } from './promise/open-jobs-section.ts';
import { promiseHead } from './promise/promise-head.ts';
import { pinnedSection, requestSections } from './promise/request-section.ts';
import { assumptionsSection } from './questions/question-page.ts';
import { cautions, warnings } from './sections/cautions.ts';

/**
 * The page with promised dates: one HTML document that opens from disk and needs nothing else. It holds no code;
 * everything that comes from the scenario is text.
 *
 * @param answer when jobs will be ready, from the state of the lab today; it is embedded as JSON
 */
export function renderPromise(answer: PromiseAnswer): string {
  resetSVGDefIds();
  const charts = drawnPromiseCharts(answer);
  const { program, run } = answer;
  return pageOf({
    title: 'When it will be ready',
    version: program.version,
    head: promiseHead(answer),
    sections: html`
${daySection(answer)}
${openJobsSection(answer, charts)}
${pinnedSection(answer)}
${requestSections(answer, charts)}
${assumptionsSection(answer.assumptions)}
${warnings(answer)}
${cautions(answer)}
${origin(answer)}`,
    footer: html`Made by buildweek ${program.version}, seed “${run.seed}”, ${run.replications} plays from the state of the lab. All
names are those of the scenario.`,
    data: jsonScript('answer', answer),
  });
}

function origin({ program, run, scenario, now }: PromiseAnswer): Html {
  const facts: readonly (readonly [string, string])[] = [
    ['Program', `${program.name} ${program.version}`],
    ['State of the lab', now],
    ['Seed', run.seed],
    ['Plays', String(run.replications)],
    ['Weeks looked ahead', String(run.lastWeeks)],
    ['Scenario, SHA-256', scenario.hash.slice(0, 16)],
  ];
  return html`
<section id="origin" aria-labelledby="origin-title">
<h2 id="origin-title">How this was computed</h2>
<p class="lede">The lab was played on from its state again and again, each time with other luck and other jobs to come. A date is an
order statistic of these plays: one more play ends by then with at least the probability beside it.</p>
<dl class="origin">${facts.map(([term, value]) => html`<div><dt>${term}</dt><dd><bdi>${value}</bdi></dd></div>`)}</dl>
<details><summary>The scenario</summary>
<pre role="group" aria-label="Scenario file" tabindex="0"><bdi>${scenario.text}</bdi></pre></details>
</section>`;
}
