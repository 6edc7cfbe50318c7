import { formatCount, leadTimeUnit, PERCENT, shareInWords, type Unit } from '@buildweek/charts';
import type { JobClass, Percentile, Results } from '@buildweek/results';
import { type DrawnChart, figure } from '../figure.ts';
import { term } from '../glossary.ts';
import { type Content, type Html, html, nameText } from '../html.ts';
import { Reasons } from '../reasons.ts';
import { type Column, table } from '../table.ts';
import { type CellManner, estimateCell, onePeriod, predictionCell } from '../words.ts';

/** The share of jobs whose value for one period has a column. */
const PERIOD_SHARE = 0.9;

function className(one: JobClass): Content {
  if (one.part === null) return one.priority === 'all' ? 'All jobs' : `All ${one.priority} jobs`;
  return one.priority === 'all' ? nameText(one.part) : html`${nameText(one.part)}, ${one.priority}`;
}

/** Shares for which any class has a percentile, ascending. */
function sharesOf(jobs: readonly JobClass[]): number[] {
  return [...new Set(jobs.flatMap((one) => one.percentiles.map((percentile) => percentile.share)))].sort(
    (one, other) => one - other,
  );
}

function percentileOf(one: JobClass, share: number): Percentile | undefined {
  return one.percentiles.find((candidate) => candidate.share === share);
}

function periodCell(one: JobClass, unit: Unit, manner: CellManner): Content {
  const percentile = percentileOf(one, PERIOD_SHARE);
  return percentile === undefined ? '' : predictionCell(percentile.onePeriod, unit, manner);
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
    ...(shares.includes(PERIOD_SHARE) ? [{ title: `Nine of ten, ${period}`, numeric: true }] : []),
    { title: 'Promises kept, %', numeric: true },
    { title: `Promises kept, ${period}, %`, numeric: true },
  ];
  const unit = leadTimeUnit(results);
  const manner = { reasons: new Reasons() };
  const rows = jobs.map((one) => [
    className(one),
    formatCount(one.jobs),
    ...(unfinished ? [formatCount(one.unfinished)] : []),
    estimateCell(one.meanLeadTime, unit, manner),
    ...shares.map((share) => {
      const percentile = percentileOf(one, share);
      return percentile === undefined ? '' : estimateCell(percentile.longRun, unit, manner);
    }),
    ...(shares.includes(PERIOD_SHARE) ? [periodCell(one, unit, manner)] : []),
    estimateCell(one.onTime, PERCENT, manner),
    predictionCell(one.onTimeOnePeriod, PERCENT, manner),
  ]);
  const caption = `Lead times in ${unit.many} by the clock, with intervals`;
  return html`${table('lead-times-table', caption, columns, rows, true)}${manner.reasons.list()}`;
}

/** How long jobs take, by part type and priority. */
export function leadTimeSection(results: Results, charts: ReadonlyMap<string, DrawnChart>): Html {
  if (results.jobs.every((one) => one.jobs === 0)) return html``;
  return html`
<section id="lead-times-section" aria-labelledby="lead-times-title">
<h2 id="lead-times-title">How long jobs take</h2>
<p class="lede">${term('lead time', 'Lead time')} runs by the clock from the complete file to the last good part: nights, weekends and breaks
count. ${term('confidence', 'Intervals')} are of the long run; what ${term('one period')} may bring is wider. Jobs that were not finished at the end of the plan count as later than everything.</p>
${figure(charts, 'lead-times')}
${leadTimeTable(results)}
</section>`;
}
