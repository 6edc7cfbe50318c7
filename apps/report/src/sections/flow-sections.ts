import { AT_A_TIME, HOURS } from '@buildweek/charts';
import type { Queue, Results } from '@buildweek/results';
import { type DrawnChart, figure } from '../figure.ts';
import { term } from '../glossary.ts';
import { type Html, html, nameText } from '../html.ts';
import { table } from '../table.ts';
import { estimateCell } from '../words.ts';

const KINDS: Readonly<Record<Queue['kind'], string>> = {
  machine: 'machine',
  station: 'station',
  people: 'people',
  all: 'jobs in the lab',
};

/** Queues: what is waited for, and when. */
export function queuesSection(results: Results, charts: ReadonlyMap<string, DrawnChart>): Html {
  const queues = results.queues
    .filter((queue) => queue.kind !== 'all')
    .sort((one, other) => other.meanLength.value - one.meanLength.value);
  if (queues.length === 0) return html``;
  return html`
<section id="queues" aria-labelledby="queues-title">
<h2 id="queues-title">Queues</h2>
<p class="lede">What jobs wait for, over the hours of the week and over the weeks of the plan. A queue that grows from
week to week says that the demand is more than the lab can serve.</p>
${figure(charts, 'queues-by-hour')}
${figure(charts, 'queues-by-week')}
${table(
  'queues-table',
  'Queues, longest first, with intervals',
  [
    { title: 'Waiting for' },
    { title: 'Kind' },
    { title: 'Jobs waiting', numeric: true },
    { title: 'Wait of each job, h', numeric: true },
  ],
  queues.map((queue) => [
    nameText(queue.name),
    KINDS[queue.kind],
    estimateCell(queue.meanLength, AT_A_TIME),
    estimateCell(queue.meanWait, HOURS),
  ]),
)}
</section>`;
}

/** Week by week: what comes in, what is finished, what is in the lab. */
export function weeksSection(charts: ReadonlyMap<string, DrawnChart>): Html {
  return html`
<section id="weeks" aria-labelledby="weeks-title">
<h2 id="weeks-title">Week by week</h2>
<p class="lede">What is finished in each week, and the ${term('jobs in the lab')} at a time: where these grow, the lab falls
behind.</p>
${figure(charts, 'finished-per-week')}
${figure(charts, 'jobs-in-lab')}
</section>`;
}
