import { PLAIN } from '@buildweek/charts';
import type { Results } from '@buildweek/results';
import { type Html, html, nameText } from '../html.ts';
import { table } from '../table.ts';
import { estimateCell } from '../words.ts';

/** What went wrong: breakdowns, lost builds, parts made again, cancelled jobs, waits that were too long. */
export function troubleSection(results: Results): Html {
  const { equipment, parts } = results.trouble;
  if (equipment.length === 0 && parts.length === 0) return html``;
  return html`
<section id="trouble" aria-labelledby="trouble-title">
<h2 id="trouble-title">What goes wrong</h2>
<p class="lede">The plan reckons with breakdowns, lost builds and parts that are made again. Their rates are
assumptions: where each came from stands further down.</p>
${equipment.length === 0 ? html`` : equipmentTable(results)}
${parts.length === 0 ? html`` : partTable(results)}
</section>`;
}

function equipmentTable(results: Results): Html {
  return table(
    'equipment-trouble',
    'Machines and stations: a week of all of a group together, with intervals',
    [
      { title: 'Group' },
      { title: 'Number', numeric: true },
      { title: 'Breakdowns', numeric: true },
      { title: 'Hours down', numeric: true },
      { title: 'Lost builds', numeric: true },
      { title: 'Maintenance and test prints, h', numeric: true },
    ],
    results.trouble.equipment.map((group) => [
      nameText(group.group),
      String(group.count),
      estimateCell(group.breakdownsPerWeek, PLAIN),
      estimateCell(group.hoursDownPerWeek, PLAIN),
      estimateCell(group.failedBuildsPerWeek, PLAIN),
      estimateCell(group.hoursOfMaintenancePerWeek, PLAIN),
    ]),
    true,
  );
}

function partTable(results: Results): Html {
  return table(
    'part-trouble',
    'Parts and jobs: an average week, with intervals',
    [
      { title: 'Part' },
      { title: 'Parts made again', numeric: true },
      { title: 'Jobs cancelled', numeric: true },
      { title: 'Jobs that waited longer for a stage than they should' },
    ],
    results.trouble.parts.map((part) => [
      nameText(part.part),
      estimateCell(part.repeatedPartsPerWeek, PLAIN),
      estimateCell(part.cancelledJobsPerWeek, PLAIN),
      part.waitedTooLong.length === 0
        ? 'none'
        : html`${part.waitedTooLong.map(
            ({ stage, jobsPerWeek }) =>
              html`<div>${nameText(stage)}: ${estimateCell(jobsPerWeek, PLAIN)}</div>`,
          )}`,
    ]),
    true,
  );
}
