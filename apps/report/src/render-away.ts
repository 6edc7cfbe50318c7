import type { AwayAnswer } from '@buildweek/results';
import { resetSVGDefIds } from 'vega';
import { drawnAwayCharts } from './figure.ts';
import { html, jsonScript } from './html.ts';
import { pageOf } from './page.ts';
import { groupsSection, promisesSection } from './questions/away-sections.ts';
import { byHandSection, questionFooter, questionHead, questionOrigin } from './questions/question-page.ts';
import { cautions, warnings } from './sections/cautions.ts';

const LEDE =
  'The lab was played with one person of each group away in turn, beside the lab as stated, on the same random numbers: replication by replication the same jobs come, with the same luck. Whoever has leave anyway in these weeks is not the one who is away.';

/**
 * The page that says what an absence does: one HTML document that opens from disk and needs nothing else. It holds no
 * code; everything that comes from the scenario is text.
 *
 * @param answer what becomes of the lab with one person of each group away; it is embedded as JSON
 */
export function renderAway(answer: AwayAnswer): string {
  resetSVGDefIds();
  const charts = drawnAwayCharts(answer);
  const { fromWeek, awayWeeks } = answer;
  const last = fromWeek + awayWeeks - 1;
  return pageOf({
    title: 'What happens while somebody is away',
    version: answer.program.version,
    head: questionHead(
      answer,
      'somebody is away',
      `${awayWeeks} ${awayWeeks === 1 ? 'week' : 'weeks'} without one person`,
      [
        [
          'Away',
          `in week ${fromWeek}${last === fromWeek ? '' : ` to ${last}`} of the measured weeks, from ${answer.startDate}`,
        ],
      ],
      null,
    ),
    sections: html`
${groupsSection(answer, charts)}
${promisesSection(answer)}
${byHandSection(answer.byHand)}
${warnings(answer)}
${cautions(answer)}
${questionOrigin(answer, LEDE)}`,
    footer: questionFooter(answer),
    data: jsonScript('answer', answer),
  });
}
