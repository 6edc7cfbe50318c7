import type { Results, WatchedWeek } from '@buildweek/results';
import { resetSVGDefIds } from 'vega';
import { drawnCharts } from './figure.ts';
import { html, jsonScript } from './html.ts';
import { livePart, packedJson } from './live/live-part.ts';
import { pageOf } from './page.ts';
import { buildsSection } from './sections/builds-section.ts';
import { cautions, warnings } from './sections/cautions.ts';
import { queuesSection, weeksSection } from './sections/flow-sections.ts';
import { handSection } from './sections/hand-section.ts';
import { head } from './sections/head.ts';
import { hoursSection } from './sections/hours-section.ts';
import { keyNumbers } from './sections/key-numbers.ts';
import { leadTimeSection } from './sections/lead-time-section.ts';
import { moneySection } from './sections/money-section.ts';
import { assumptionsSection, originSection, scenarioSection } from './sections/origin-sections.ts';
import { machinesSection, peopleSection, stationsSection } from './sections/resources-section.ts';
import { sentOutSection } from './sections/sent-out-section.ts';
import { targetsSection } from './sections/targets-section.ts';
import { troubleSection } from './sections/trouble-section.ts';
import { longestJob, watchedWeekSection } from './week/watched-week-section.ts';

/**
 * The page that leadership reads: one HTML document that opens from disk and needs nothing else. Where it can read the
 * scenario by itself, it answers back: the simulator stands in it, and its script is the only one that its policy lets
 * run. Everything that comes from the scenario is text.
 *
 * @param results the document that a run leaves behind; it is embedded as JSON
 * @param week one week of one of its replications, to be shown machine by machine; null shows none
 */
export function renderReport(results: Results, week: WatchedWeek | null = null): string {
  resetSVGDefIds();
  const charts = drawnCharts(results);
  const live = livePart(results, 'as it is');
  const sections = html`
${targetsSection(results)}
${keyNumbers(results)}
${live.section}
${warnings(results)}
${leadTimeSection(results, charts)}
${hoursSection(results, charts)}
${cautions(results)}
${peopleSection(results, charts)}
${machinesSection(results, charts)}
${buildsSection(results, charts)}
${stationsSection(results, charts)}
${troubleSection(results)}
${sentOutSection(results)}
${moneySection(results, charts)}
${queuesSection(results, charts)}
${weeksSection(charts)}
${week === null ? null : watchedWeekSection(week, longestJob(week)?.job ?? null)}
${handSection(results, charts)}
${assumptionsSection(results)}
${originSection(results)}
${scenarioSection(results)}`;
  return pageOf({
    title: `${results.scenario.name} · capacity of the lab`,
    version: results.program.version,
    head: head(results),
    sections,
    footer: html`Made by buildweek ${results.program.version} from the scenario with hash ${results.scenario.hash.slice(0, 12)}…,
seed “${results.run.seed}”, ${results.run.replications} replications. All names and numbers of the scenario are its author’s.`,
    data: live.script === null ? jsonScript('results', results) : packedJson('results', results),
    live,
  });
}
