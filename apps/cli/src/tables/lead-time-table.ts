import {
  formatCount,
  formatEstimate,
  formatInterval,
  leadTimeUnit,
  PERCENT,
  type Unit,
  unnamed,
} from '@buildweek/charts';
import {
  type EstimateOrRefused,
  type JobClass,
  type PredictionOrRefused,
  periodName,
  type Results,
} from '@buildweek/results';
import type { Style } from '../terminal/style.ts';
import { numbers, tableText, words } from '../terminal/table.ts';
import type { Footnotes } from './footnotes.ts';

const SHOWN = [
  { share: 0.5, title: 'half within' },
  { share: 0.9, title: '9 of 10 within' },
  { share: 0.95, title: '19 of 20 within' },
];

/** Lead times and kept promises by class of jobs, each with its interval. */
export function leadTimeTable(
  { jobs, run }: Pick<Results, 'jobs' | 'run'>,
  footnotes: Footnotes,
  style: Style,
): string {
  const unit = leadTimeUnit({ jobs });
  const columns = [
    words('jobs'),
    numbers('played'),
    ...SHOWN.map(({ title }) => numbers(`${title}, ${unit.many}`)),
    numbers(`9 of 10, one ${periodName(run.weeks)}`),
    numbers('on time'),
  ];
  return tableText(
    columns,
    jobs.map((job) => ({
      cells: [
        nameOf(job),
        formatCount(job.jobs),
        ...SHOWN.map(({ share }) => estimateCell(percentile(job, share)?.longRun, unit, footnotes)),
        periodCell(percentile(job, 0.9)?.onePeriod, unit, footnotes),
        job.onTime.kind === 'estimate'
          ? formatEstimate(job.onTime, PERCENT)
          : footnotes.mark(job.onTime.reason),
      ],
    })),
    style,
  );
}

function nameOf({ part, priority }: JobClass): string {
  if (part === null) return priority === 'all' ? 'all jobs' : `all ${priority} jobs`;
  return priority === 'all' ? part : `  ${priority}`;
}

function percentile(job: JobClass, share: number): JobClass['percentiles'][number] | undefined {
  return job.percentiles.find((candidate) => candidate.share === share);
}

function estimateCell(estimate: EstimateOrRefused | undefined, unit: Unit, footnotes: Footnotes): string {
  if (estimate === undefined) return '';
  return estimate.kind === 'estimate'
    ? formatEstimate(estimate, unnamed(unit))
    : footnotes.mark(estimate.reason);
}

function periodCell(prediction: PredictionOrRefused | undefined, unit: Unit, footnotes: Footnotes): string {
  if (prediction === undefined) return '';
  return prediction.kind === 'prediction'
    ? formatInterval(prediction, unit)
    : footnotes.mark(prediction.reason);
}
