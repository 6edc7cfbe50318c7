import { optionsChart } from '@buildweek/charts';
import type { DecisionAnswer, WatchedWeek } from '@buildweek/results';
import { resetSVGDefIds } from 'vega';
import { decisionHead } from './decision/decision-head.ts';
import { optionsSection } from './decision/options-section.ts';
import { foundSection, reasonsSection } from './decision/reasons-section.ts';
import { byId, drawnCharts, drawnDoubtsCharts, figure } from './figure.ts';
import { type Html, html, jsonScript } from './html.ts';
import { livePart } from './live/live-part.ts';
import { pageOf } from './page.ts';
import { heldSection } from './questions/doubts-sections.ts';
import { cautions, warnings } from './sections/cautions.ts';
import { queuesSection, weeksSection } from './sections/flow-sections.ts';
import { hoursSection } from './sections/hours-section.ts';
import { keyNumbers } from './sections/key-numbers.ts';
import { leadTimeSection } from './sections/lead-time-section.ts';
import { moneySection } from './sections/money-section.ts';
import { assumptionsSection, originSection, scenarioSection } from './sections/origin-sections.ts';
import { machinesSection, peopleSection, stationsSection } from './sections/resources-section.ts';
import { troubleSection } from './sections/trouble-section.ts';
import { longestJob, watchedWeekSection } from './week/watched-week-section.ts';

/**
 * The page by which leadership decides: what is proposed, three numbers and the chart that shows why on the first
 * screen; below it the options, the recommended lab in full, and what it rests on. It answers back where it can read
 * the recommended scenario by itself. Everything that comes from the scenario is text.
 *
 * @param answer the decision; what it says itself is embedded as JSON, what it rests on would make the page too large
 * @param week one week of the recommended lab, to be shown machine by machine; null shows none
 */
export function renderDecision(answer: DecisionAnswer, week: WatchedWeek | null = null): string {
  resetSVGDefIds();
  const results = answer.recommended ?? answer.today;
  const charts = drawnCharts(results);
  const own = byId(optionsChart(answer, 'wide'), optionsChart(answer, 'narrow'));
  const live = livePart(results, answer.recommended === null ? 'as it is' : 'the recommended lab');
  const { program, run } = answer;
  return pageOf({
    title: `${answer.scenarioName} · decision`,
    version: program.version,
    head: decisionHead(answer, own),
    sections: html`
${reasonsSection(answer)}
${optionsSection(answer)}
${live.section}
${partTitle(answer)}
${keyNumbers(results)}
${hoursSection(results, charts)}
${leadTimeSection(results, charts)}
${peopleSection(results, charts)}
${machinesSection(results, charts)}
${stationsSection(results, charts)}
${queuesSection(results, charts)}
${weeksSection(charts)}
${week === null ? null : watchedWeekSection(week, longestJob(week)?.job ?? null)}
${moneySection(results, charts)}
${troubleSection(results)}
${doubtsSection(answer)}
${cautions(answer)}
${warnings(answer)}
${foundSection(answer)}
${assumptionsSection(results)}
${originSection(results)}
${scenarioSection(results)}`,
    footer: html`Made by buildweek ${program.version}, seed “${run.seed}”, ${run.replications} replications of each option. All names
and numbers of the scenario are its author’s.`,
    data: jsonScript('decision', shownOf(answer)),
    live,
  });
}

/** The decision without the documents that it rests on. */
function shownOf(
  answer: DecisionAnswer,
): Omit<DecisionAnswer, 'today' | 'recommended' | 'search' | 'doubts'> {
  const { today: _, recommended: __, search: ___, doubts: ____, ...shown } = answer;
  return shown;
}

/** From here on the page is about one lab. */
function partTitle({ recommended }: DecisionAnswer): Html {
  return html`
<p class="part-title">${recommended === null ? 'The lab as it is, in full' : 'The recommended lab, in full'}</p>`;
}

/** What could go wrong: what is in doubt, one assumption at a time, and all at once. */
function doubtsSection({ doubts }: DecisionAnswer): Html {
  if (doubts === null) return html``;
  const charts = drawnDoubtsCharts(doubts);
  return html`
<section id="doubts" aria-labelledby="doubts-title">
<h2 id="doubts-title">What could go wrong</h2>
<p class="lede">The scenario says how far its assumptions may be off. Each is set to either end of its range by itself; then all
are drawn at once, ${doubts.worlds} times.</p>
<ul class="answers">${doubts.verdict.map((sentence) => html`<li><bdi>${sentence}</bdi></li>`)}</ul>
${figure(charts, 'tornado')}
${figure(charts, 'held')}
</section>
${heldSection(doubts)}`;
}
