import { DAYS, formatCount, PERCENT, shareInWords } from '@buildweek/charts';
import type { JobClass, Results } from '@buildweek/results';
import { type DrawnChart, figure } from '../figure.ts';
import { type Content, type Html, html, nameText } from '../html.ts';
import { type Column, table } from '../table.ts';
import { estimateCell, onePeriod, percentileCells, predictionCell } from '../words.ts';

function className(one: JobClass): Content {
  const part = one.part === null ? 'All' : nameText(one.part);
  return one.priority === 'all'
    ? html`${part}${one.part === null ? ' jobs' : ''}`
    : html`${part}, ${one.priority}`;
}

/** Shares for which any class has a percentile, ascending. */
function sharesOf(jobs: readonly JobClass[]): number[] {
  return [...new Set(jobs.flatMap((one) => one.percentiles.map((percentile) => percentile.share)))].sort(
    (one, other) => one - other,
  );
}

function leadTimeTable(results: Results): Html {
  const jobs = results.jobs.filter((one) => one.jobs > 0);
  const shares = sharesOf(jobs);
  const period = onePeriod(results.run);
  const unfinished = jobs.some((one) => one.unfinished > 0);
  const columns: Column[] = [
    { title: 'Jobs' },
    { title: 'Played', numeric: true },
    ...(unfinished ? [{ title: 'Unfinished', numeric: true }] : []),
    { title: 'Mean', numeric: true },
    ...shares.map((share) => ({ title: share === 0.5 ? 'Half' : shareInWords(share), numeric: true })),
    ...(shares.includes(0.9) ? [{ title: `Nine of ten, ${period}`, numeric: true }] : []),
    { title: 'Promises kept, %', numeric: true },
    { title: `Promises kept, ${period}, %`, numeric: true },
  ];
  const rows = jobs.map((one) => [
    className(one),
    formatCount(one.jobs),
    ...(unfinished ? [formatCount(one.unfinished)] : []),
    estimateCell(one.meanLeadTime, DAYS),
    ...shares.map((share) => percentileCells(one, share)[0]),
    ...(shares.includes(0.9) ? [percentileCells(one, 0.9)[1]] : []),
    estimateCell(one.onTime, PERCENT),
    predictionCell(one.onTimeOnePeriod, PERCENT),
  ]);
  return table('lead-times-table', 'Lead times in days of 24 hours, with intervals', columns, rows, true);
}

/** How long jobs take, by part type and priority. */
export function leadTimeSection(results: Results, charts: ReadonlyMap<string, DrawnChart>): Html {
  if (results.jobs.every((one) => one.jobs === 0)) return html``;
  return html`
<section id="lead-times-section" aria-labelledby="lead-times-title">
<h2 id="lead-times-title">How long jobs take</h2>
<p class="lede">Lead time runs by the clock from the complete file to the last good part: nights, weekends and breaks
count. Jobs that were not finished at the end of the plan count as later than everything.</p>
${figure(charts, 'lead-times')}
${leadTimeTable(results)}
</section>`;
}
