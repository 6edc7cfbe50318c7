import { type Chart, chartsOf, confidenceNote, targetFound } from '@buildweek/charts';
import type { Caution, ComparisonAnswer, Results } from '@buildweek/results';
import { resetSVGDefIds } from 'vega';
import { drawnComparisonCharts, figure, picture } from '../../figure.ts';
import { type Html, html, nameText } from '../../html.ts';
import { pairTable } from '../../plans/pair-section.ts';
import { verdictMark } from '../../sections/targets-section.ts';
import { table } from '../../table.ts';
import { prefixIds } from './prefix-ids.ts';

/** Begins every id of what a worker writes into the page. */
const PREFIX = 'live-';

/** A lab that was played, with the word for it. */
export interface NamedResults {
  readonly name: string;
  readonly results: Results;
  /** Hash of the record of the first replication. */
  readonly record: string;
}

/** The answer to a change: the sentence stands outside of it, where it is read out. */
export function answerHtml(answer: ComparisonAnswer, before: NamedResults, after: NamedResults): Html {
  resetSVGDefIds();
  const charts = drawnComparisonCharts(answer);
  return prefixIds(
    html`
${targetsBeside(before, after)}
<h3 id="numbers-title">Key numbers</h3>
${figure(charts, 'differences-1')}
${pairTable(answer, 0, false)}
${newCautions(before.results.cautions, after.results.cautions)}
${warningsOf(after)}
<h3 id="beside-title">The same charts for both labs</h3>
<p class="note">Each chart has a scale of its own: read the figures, not the lengths, from one lab to the other.</p>
<ul class="live-charts">${chartsOf(after.results, 'narrow').map(
      ({ id }) =>
        html`<li><details data-chart="${id}"><summary>${SUBJECTS[id] ?? id}</summary></details></li>\n`,
    )}</ul>
<p class="note">Played from seed “${answer.run.seed}”, ${answer.run.replications} replications of ${weeksText(answer.run.weeks)} of each lab,
after ${answer.run.ignoredWeeks.weeks} ignored. Record of replication 0: ${before.name} <code>${before.record.slice(0, 16)}</code>, ${after.name} <code>${after.record.slice(0, 16)}</code>.</p>`,
    PREFIX,
  );
}

function weeksText(weeks: number): string {
  return `${weeks} ${weeks === 1 ? 'week' : 'weeks'}`;
}

/** What the charts are about, in the words of a list. */
const SUBJECTS: Readonly<Record<string, string>> = {
  'lead-times': 'How long jobs take',
  'print-share': 'How much of it is printing',
  'hours-by-part': 'Where the hours go, by part type',
  'hours-by-step': 'Where the hours go, step by step',
  'people-hours': 'What people’s hours go to',
  'people-by-hour': 'People through the week',
  'machine-states': 'What machines do',
  'build-fill': 'How full builds are',
  'station-states': 'What stations do',
  'queues-by-hour': 'Queues through the week',
  'queues-by-week': 'Queues from week to week',
  'cost-split': 'What the money goes to',
  'finished-per-week': 'What is finished each week',
  'jobs-in-lab': 'Jobs in the lab',
  'load-by-hand': 'Load by hand calculation',
};

function targetsBeside(before: NamedResults, after: NamedResults): Html {
  const { targets } = after.results;
  if (targets.length === 0) return html``;
  const { weeks } = after.results.run;
  return html`
<h3 id="kept-title">Targets</h3>
${table(
  'kept-table',
  'What the scenario asks of the lab, and what was found in each, with its interval',
  [{ title: 'Target' }, { title: before.name }, { title: after.name }],
  targets.map((target) => [
    html`<strong>${nameText(target.wording)}</strong>`,
    ...[before, after].map(({ results }) => {
      const found = results.targets.find(({ wording }) => wording === target.wording);
      return found === undefined ? 'not asked' : html`${verdictMark(found)}${targetFound(found, weeks)}`;
    }),
  ]),
)}
<p class="note">${confidenceNote(targets)}</p>`;
}

/** What has to be said of the changed lab and not of the plan. */
function newCautions(before: readonly Caution[], after: readonly Caution[]): Html {
  const known = new Set(before.map(({ text }) => text));
  const added = after.filter(({ text }) => !known.has(text));
  if (added.length === 0) return html``;
  return html`
<div class="cautions"><h3 id="cautions-title">Before this change is followed</h3>
<dl>${added.map(({ topic, text }) => html`<div><dt>${topic}</dt><dd>${text}</dd></div>`)}</dl></div>`;
}

function warningsOf({ results: { warnings } }: NamedResults): Html {
  if (warnings.length === 0) return html``;
  return html`
<div class="warnings"><h3 id="warnings-title">Read the numbers with this in mind</h3>
<ul>${warnings.map((warning) => html`<li>${warning}</li>`)}</ul></div>`;
}

/**
 * One chart of both labs, one beside the other where there is room.
 * @returns nothing where neither lab has it
 */
export function chartBeside(id: string, labs: readonly NamedResults[]): Html {
  resetSVGDefIds();
  const figures = labs.map(({ name, results }, index) => {
    const chart = chartsOf(results, 'narrow').find((one) => one.id === id);
    // The drawings of both are made one after the other, so that what they define has ids of its own.
    return chart === undefined
      ? html`<figure><figcaption>${name}: nothing to show</figcaption></figure>`
      : prefixIds(smallFigure(name, chart), `${PREFIX}${index}-`);
  });
  return html`<div class="beside">${figures}</div>`;
}

function smallFigure(name: string, chart: Chart): Html {
  return html`
<figure>
<figcaption id="${chart.id}"><span class="lab">${name}</span> ${chart.title}</figcaption>
${picture(chart, 'narrow', 'small')}
<div class="note">
<p>${chart.footnote}</p>
<details><summary>The same in words</summary><p id="${chart.id}-words">${chart.description}</p></details>
</div>
</figure>`;
}
