import type { PlanAnswer } from '@buildweek/results';
import { resetSVGDefIds } from 'vega';
import { drawnPlanCharts } from './figure.ts';
import { html, jsonScript } from './html.ts';
import { pageOf } from './page.ts';
import { handLoads } from './plans/hand-loads.ts';
import { planHead } from './plans/plan-head.ts';
import { planScenario, searchSection } from './plans/search-section.ts';
import { neighboursSection, plansSection, targetsSection } from './plans/shown-plans.ts';
import { cautions, warnings } from './sections/cautions.ts';

/**
 * The page that answers how many of what: one HTML document that opens from disk and needs nothing else. It holds no
 * code; everything that comes from the scenario is text.
 *
 * @param answer what the search found; it is embedded as JSON
 */
export function renderPlan(answer: PlanAnswer): string {
  resetSVGDefIds();
  const charts = drawnPlanCharts(answer);
  return pageOf({
    title: `${answer.scenario.name}: how many`,
    version: answer.program.version,
    head: planHead(answer),
    sections: html`
${plansSection(answer, charts)}
${targetsSection(answer, charts)}
${neighboursSection(answer)}
${warnings(answer)}
${handLoads(answer, answer.chosen ?? 'the plan that comes closest')}
${cautions(answer)}
${searchSection(answer)}
${planScenario(answer)}`,
    footer: html`Made by buildweek ${answer.program.version}, seed “${answer.run.seed}”, ${answer.run.replications} replications over
all plans. All names are those of the scenario.`,
    data: jsonScript('answer', answer),
  });
}
