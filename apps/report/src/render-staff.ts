import type { StaffAnswer } from '@buildweek/results';
import { resetSVGDefIds } from 'vega';
import { drawnStaffCharts } from './figure.ts';
import { html, jsonScript } from './html.ts';
import { pageOf } from './page.ts';
import { planOrigin } from './plans/plan-origin.ts';
import { cautions, warnings } from './sections/cautions.ts';
import { staffHoursSection } from './staff/hours-section.ts';
import { changesSection, optionsSection } from './staff/options-section.ts';
import { staffHandSection } from './staff/staff-hand-section.ts';
import { staffHead } from './staff/staff-head.ts';
import { waitingSection } from './staff/waiting-section.ts';

/**
 * The page that says whom to have when: one HTML document that opens from disk and needs nothing else. It holds no
 * code; everything that comes from the scenario is text.
 *
 * @param answer ways of staffing a lab; it is embedded as JSON
 */
export function renderStaff(answer: StaffAnswer): string {
  resetSVGDefIds();
  const charts = drawnStaffCharts(answer);
  const { program, run } = answer;
  return pageOf({
    title: `Whom to have when: ${answer.scenarioName}`,
    version: program.version,
    head: staffHead(answer, charts),
    sections: html`
${waitingSection(answer, charts)}
${optionsSection(answer)}
${staffHoursSection(answer)}
${staffHandSection(answer)}
${changesSection(answer)}
${warnings(answer)}
${cautions(answer)}
${planOrigin(answer)}`,
    footer: html`Made by buildweek ${program.version}, seed “${run.seed}”, ${run.replications} replications of each option.
${answer.notes.map((note) => `${note} `)}All names are those of the scenario.`,
    data: jsonScript('answer', answer),
  });
}
