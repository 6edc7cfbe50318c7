import type { GrowthAnswer } from '@buildweek/results';
import { resetSVGDefIds } from 'vega';
import { drawnGrowthCharts, figure } from './figure.ts';
import { html, jsonScript } from './html.ts';
import { pageOf } from './page.ts';
import { nothingBoughtSection, stepsSection } from './questions/growth-sections.ts';
import {
  assumptionsSection,
  byHandSection,
  questionFooter,
  questionHead,
  questionOrigin,
} from './questions/question-page.ts';
import { cautions, warnings } from './sections/cautions.ts';

const LEDE =
  'The demand of each month was played as if it had come to stay, on the same random numbers in all months and with everything that was tried. A verdict is one-sided: met or missed is said from the stated confidence on, for each month by itself.';

/**
 * The page that says until when a lab is large enough: one HTML document that opens from disk and needs nothing else.
 * It holds no code; everything that comes from the scenario is text.
 *
 * @param answer months, targets and what restores them; it is embedded as JSON
 */
export function renderGrowth(answer: GrowthAnswer): string {
  resetSVGDefIds();
  const charts = drawnGrowthCharts(answer);
  const first = firstMissedTarget(answer);
  return pageOf({
    title: 'Until when the lab is large enough',
    version: answer.program.version,
    head: questionHead(
      answer,
      'growth',
      'until when it is large enough',
      [
        ['Demand grows', answer.growth],
        ['Looked at', `${answer.horizon} months`],
      ],
      figure(charts, `growth-${first + 1}`),
    ),
    sections: html`
${nothingBoughtSection(answer, charts, first)}
${stepsSection(answer)}
${byHandSection(answer.byHand)}
${assumptionsSection(answer.assumptions)}
${warnings(answer)}
${cautions(answer)}
${questionOrigin(answer, LEDE)}`,
    footer: questionFooter(answer),
    data: jsonScript('answer', answer),
  });
}

/** Position of the target that is missed first; its chart stands on top. */
function firstMissedTarget({ months, neededIn }: GrowthAnswer): number {
  const found = neededIn === null ? undefined : months[neededIn]?.targets;
  return Math.max(0, found?.findIndex(({ verdict }) => verdict === 'missed') ?? 0);
}
