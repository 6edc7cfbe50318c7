import type { PartAnswer } from '@buildweek/results';
import { resetSVGDefIds } from 'vega';
import { drawnPartCharts } from './figure.ts';
import { html, jsonScript } from './html.ts';
import { pageOf } from './page.ts';
import { fitSection, impossibleSection, measuredSection, partAssumptions } from './part/fit-section.ts';
import { partHead } from './part/part-head.ts';
import { partOrigin } from './part/part-origin.ts';
import { hoursPerPartSection, minutesPerPartSection, quantitiesSection } from './part/quantities-section.ts';
import { timelinesSection } from './part/timelines-section.ts';
import { cautions } from './sections/cautions.ts';

/**
 * The page that answers which process to take for one part: one HTML document that opens from disk and needs nothing
 * else. It holds no code; everything that comes from the lab or the file of the part is text.
 *
 * @param answer what one part costs in hours on each process of a lab; it is embedded as JSON
 */
export function renderPart(answer: PartAnswer): string {
  resetSVGDefIds();
  const charts = drawnPartCharts(answer);
  return pageOf({
    title: `Which process for the ${answer.part.name}?`,
    version: answer.program.version,
    head: partHead(answer, charts),
    sections: html`
${timelinesSection(answer, charts)}
${hoursPerPartSection(answer, charts)}
${minutesPerPartSection(charts)}
${quantitiesSection(answer)}
${fitSection(answer)}
${impossibleSection(answer)}
${measuredSection(answer)}
${cautions(answer)}
${partAssumptions(answer)}
${partOrigin(answer)}`,
    footer: html`Made by buildweek ${answer.program.version}, seed “${answer.seed}”, ${answer.plays} plays in an empty lab: the
hours are a floor. All names are those of the lab and of the file of the part.`,
    data: jsonScript('answer', answer),
  });
}
