import type { ComparisonAnswer } from '@buildweek/results';
import { resetSVGDefIds } from 'vega';
import { drawnComparisonCharts } from './figure.ts';
import { html, jsonScript } from './html.ts';
import { pageOf } from './page.ts';
import { comparisonHand } from './plans/comparison-hand.ts';
import { comparisonHead } from './plans/comparison-head.ts';
import { pairSection } from './plans/pair-section.ts';
import { planOrigin, scenariosSection } from './plans/plan-origin.ts';
import { cautions, warnings } from './sections/cautions.ts';

/**
 * The page that compares plans of a lab: one HTML document that opens from disk and needs nothing else. It holds no
 * code; everything that comes from the scenarios is text.
 *
 * @param answer the plans with their differences; it is embedded as JSON
 */
export function renderComparison(answer: ComparisonAnswer): string {
  resetSVGDefIds();
  const charts = drawnComparisonCharts(answer);
  return pageOf({
    title: 'What a change of the lab brings',
    version: answer.program.version,
    head: comparisonHead(answer),
    sections: html`
${answer.pairs.map((_, position) => pairSection(answer, position, charts))}
${comparisonHand(answer)}
${warnings(answer)}
${cautions(answer)}
${scenariosSection(answer)}
${planOrigin(answer)}`,
    footer: html`Made by buildweek ${answer.program.version}, seed “${answer.run.seed}”, ${answer.run.replications} replications of
each plan. All names are those of the scenarios.`,
    data: jsonScript('answer', answer),
  });
}
