import { JOBS, leadTimeUnit, PARTS, PERCENT, shareInWords, type Unit } from '@buildweek/charts';
import {
  type EstimateOrRefused,
  type JobClass,
  lastingGrowth,
  meanOfBand,
  type PredictionOrRefused,
  type Results,
} from '@buildweek/results';
import { type Html, html } from '../html.ts';
import { Reasons } from '../reasons.ts';
import { table } from '../table.ts';
import { estimateCell, onePeriod, predictionCell } from '../words.ts';

interface KeyNumber {
  readonly what: string;
  readonly unit: Unit;
  readonly longRun: EstimateOrRefused;
  /** Null where one period is not asked about. */
  readonly period: PredictionOrRefused | null;
}

/** A class of jobs and what its jobs are called. */
interface NamedClass {
  readonly one: JobClass;
  readonly jobs: string;
}

const PRIORITIES: readonly (readonly [JobClass['priority'], string])[] = [
  ['all', 'jobs'],
  ['normal', 'normal jobs'],
  ['rush', 'rush jobs'],
];

const SHARE = 0.9;

/** The classes worth a line of their own: all jobs, and by priority where there are both. */
function classesOf(results: Results): NamedClass[] {
  const found = PRIORITIES.flatMap(([priority, jobs]): NamedClass[] => {
    const one = results.jobs.find((candidate) => candidate.part === null && candidate.priority === priority);
    return one === undefined || one.jobs === 0 ? [] : [{ one, jobs }];
  });
  return found.some(({ one }) => one.priority === 'rush') ? found : found.slice(0, 1);
}

function leadTimeNumbers({ one, jobs }: NamedClass, unit: Unit): KeyNumber[] {
  return one.percentiles
    .filter((percentile) => percentile.share === SHARE)
    .map(({ longRun, onePeriod: period }) => ({
      what: `${shareInWords(SHARE)} ${jobs} are finished within`,
      unit,
      longRun,
      period,
    }));
}

function promiseNumbers({ one, jobs }: NamedClass): KeyNumber[] {
  if (one.onTime.kind !== 'estimate') return [];
  const whose = one.priority === 'all' ? 'all jobs' : jobs;
  return [
    { what: `Promises kept, ${whose}`, unit: PERCENT, longRun: one.onTime, period: one.onTimeOnePeriod },
  ];
}

function flowNumbers({ flow }: Results): KeyNumber[] {
  return [
    { what: 'Jobs finished a week', unit: JOBS, longRun: meanOfBand(flow.finishedJobs), period: null },
    { what: 'Parts finished a week', unit: PARTS, longRun: meanOfBand(flow.finishedParts), period: null },
    { what: 'Jobs in the lab at a time', unit: JOBS, longRun: meanOfBand(flow.jobsInLab), period: null },
  ];
}

/** The few numbers a meeting asks for, each for the long run and for one period. */
export function keyNumbers(results: Results): Html {
  const classes = classesOf(results);
  const unit = leadTimeUnit(results);
  const manner = { spoken: true, reasons: new Reasons() };
  const numbers = [
    ...classes.flatMap((one) => leadTimeNumbers(one, unit)),
    ...classes.flatMap(promiseNumbers),
    ...flowNumbers(results),
  ];
  const period = onePeriod(results.run);
  const grows = lastingGrowth(results.flow.jobsInLab) !== null;
  return html`
<section id="key-numbers" aria-labelledby="key-numbers-title">
<h2 id="key-numbers-title">Key numbers</h2>
${table(
  'key-numbers-table',
  grows
    ? `The average of exactly these weeks with its interval, and what ${period} may bring. The jobs in the lab grow, so that later weeks are worse. A day is 24 hours by the clock.`
    : `The average, with its interval, if ${period} like this came again and again, and what ${period} may bring. A day is 24 hours by the clock.`,
  [
    { title: 'What' },
    { title: grows ? 'In these weeks' : 'In the long run', numeric: true },
    { title: `In ${period}`, numeric: true },
  ],
  numbers.map((number) => [
    number.what,
    estimateCell(number.longRun, number.unit, manner),
    number.period === null
      ? html`<span class="none">–</span>`
      : predictionCell(number.period, number.unit, manner),
  ]),
)}
${manner.reasons.list()}
</section>`;
}
