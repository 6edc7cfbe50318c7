import { DAYS, JOBS, meanOfBand, PARTS, PERCENT, shareInWords, type Unit } from '@buildweek/charts';
import type { EstimateOrRefused, JobClass, PredictionOrRefused, Results } from '@buildweek/results';
import { type Content, type Html, html } from '../html.ts';
import { type Row, table } from '../table.ts';
import { estimateCell, onePeriod, predictionCell } from '../words.ts';

const PRIORITIES: readonly (readonly [JobClass['priority'], string])[] = [
  ['all', 'jobs'],
  ['normal', 'normal jobs'],
  ['rush', 'rush jobs'],
];

function row(what: Content, unit: Unit, longRun: EstimateOrRefused, period: PredictionOrRefused | null): Row {
  const cell =
    period === null ? html`<span class="none">–</span>` : predictionCell(period, unit, { spoken: true });
  return [what, estimateCell(longRun, unit, { spoken: true }), cell];
}

/** The classes worth a line of their own: all jobs, and by priority where there are both. */
function classes(results: Results): { one: JobClass; words: string }[] {
  const found = PRIORITIES.flatMap(([priority, words]) => {
    const one = results.jobs.find((candidate) => candidate.part === null && candidate.priority === priority);
    return one === undefined || one.jobs === 0 ? [] : [{ one, words }];
  });
  return found.some(({ one }) => one.priority === 'rush') ? found : found.slice(0, 1);
}

/** The few numbers a meeting asks for, each for the long run and for one period. */
export function keyNumbers(results: Results): Html {
  const known = classes(results);
  const percentileRows = known.flatMap(({ one, words }) =>
    one.percentiles
      .filter((percentile) => percentile.share === 0.9)
      .map((percentile) =>
        row(
          `${shareInWords(percentile.share)} ${words} are finished within`,
          DAYS,
          percentile.longRun,
          percentile.onePeriod,
        ),
      ),
  );
  const onTimeRows = known
    .filter(({ one }) => one.onTime.kind === 'estimate')
    .map(({ one, words }) =>
      row(
        `Promises kept, ${words === 'jobs' ? 'all jobs' : words}`,
        PERCENT,
        one.onTime,
        one.onTimeOnePeriod,
      ),
    );
  const flowRows = [
    row('Jobs finished a week', JOBS, meanOfBand(results.flow.finishedJobs), null),
    row('Parts finished a week', PARTS, meanOfBand(results.flow.finishedParts), null),
    row('Jobs in the lab at a time', JOBS, meanOfBand(results.flow.jobsInLab), null),
  ];
  return html`
<section id="key-numbers" aria-labelledby="key-numbers-title">
<h2 id="key-numbers-title">Key numbers</h2>
${table(
  'key-numbers-table',
  `The average over many such periods with its interval, and what ${onePeriod(results.run)} may bring. A day is 24 hours by the clock.`,
  [
    { title: 'What' },
    { title: 'In the long run', numeric: true },
    { title: `In ${onePeriod(results.run)}`, numeric: true },
  ],
  [...percentileRows, ...onTimeRows, ...flowRows],
)}
</section>`;
}
