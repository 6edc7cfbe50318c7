import { HOURS, stepName, WAIT_CAUSE_PARTS } from '@buildweek/charts';
import type { PartHours, Results, StepHours } from '@buildweek/results';
import { type DrawnChart, figure } from '../figure.ts';
import { term } from '../glossary.ts';
import { type Content, type Html, html, nameText } from '../html.ts';
import { table } from '../table.ts';
import { estimateCell } from '../words.ts';

function waitsCell(step: StepHours): Content {
  return [...step.waits]
    .sort((one, other) => other.hours.value - one.hours.value)
    .map(
      (wait) =>
        html`<span class="wait">${WAIT_CAUSE_PARTS[wait.cause].label} ${estimateCell(wait.hours, HOURS)}</span> `,
    );
}

function stepsTable(part: PartHours, index: number): Html {
  return html`<h3>${nameText(part.part)}</h3>
${table(
  `hours-table-${index}`,
  `${part.part}: hours per finished job, with intervals; route “${part.route}”`,
  [
    { title: 'Step' },
    { title: 'Hands' },
    { title: 'Work, h', numeric: true },
    { title: 'Waits before it, h' },
  ],
  part.steps.map((step) => [
    html`<bdi>${stepName(step)}</bdi>`,
    step.attended ? 'attended' : 'by itself',
    estimateCell(step.work, HOURS),
    waitsCell(step),
  ]),
)}`;
}

/** Where the hours of a job go: printing against every other step and every cause of waiting. */
export function hoursSection(results: Results, charts: ReadonlyMap<string, DrawnChart>): Html {
  if (results.hours.length === 0) return html``;
  return html`
<section id="hours" aria-labelledby="hours-title">
<h2 id="hours-title">Where the hours go</h2>
<p class="lede">Every hour of a job is either work that goes on or a wait with one cause: the first thing that was
missing. Together they make the ${term('lead time')}.</p>
${figure(charts, 'print-share')}
${figure(charts, 'hours-by-part')}
${figure(charts, 'hours-by-step')}
<details class="more"><summary>Every step in numbers</summary>
${results.hours.map(stepsTable)}
</details>
</section>`;
}
