import type { DoubtsAnswer } from '@buildweek/results';
import { resetSVGDefIds } from 'vega';
import { drawnDoubtsCharts, figure } from './figure.ts';
import { html, jsonScript } from './html.ts';
import { pageOf } from './page.ts';
import { effectsSection, explainedSection, heldSection } from './questions/doubts-sections.ts';
import {
  assumptionsSection,
  byHandSection,
  questionFooter,
  questionHead,
  questionOrigin,
} from './questions/question-page.ts';
import { cautions, warnings } from './sections/cautions.ts';

const LEDE =
  'Every lab was played on the same random numbers: replication by replication the same jobs come, and what exists in both has the same luck. In the drawn worlds each factor comes from a stream of its own, one world for each replication. What is explained is found by a linear regression over the worlds.';

/**
 * The page that says which assumptions matter: one HTML document that opens from disk and needs nothing else. It holds
 * no code; everything that comes from the scenario is text.
 *
 * @param answer effects of doubts and what holds in spite of them; it is embedded as JSON
 */
export function renderDoubts(answer: DoubtsAnswer): string {
  resetSVGDefIds();
  const charts = drawnDoubtsCharts(answer);
  return pageOf({
    title: 'Which assumptions matter',
    version: answer.program.version,
    head: questionHead(
      answer,
      'doubts',
      'which assumptions matter',
      [['Doubts', `${answer.doubts.length}, in ${answer.worlds} drawn worlds`]],
      figure(charts, 'held'),
    ),
    sections: html`
${effectsSection(answer, charts)}
${heldSection(answer)}
${explainedSection(answer, charts)}
${byHandSection(answer.byHand)}
${assumptionsSection(answer.assumptions)}
${warnings(answer)}
${cautions(answer)}
${questionOrigin(answer, LEDE)}`,
    footer: questionFooter(answer),
    data: jsonScript('answer', answer),
  });
}
