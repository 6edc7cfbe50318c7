import {
  DAYS,
  formatCount,
  formatEstimate,
  formatInterval,
  HOURS,
  PERCENT,
  type Unit,
  unnamed,
} from '@buildweek/charts';
import type { EstimateOrRefused, JobClass, PredictionOrRefused } from '@buildweek/results';
import type { Style } from '../terminal/style.ts';
import { numbers, tableText, words } from '../terminal/table.ts';
import type { Footnotes } from './footnotes.ts';

const SHOWN = [
  { share: 0.5, title: 'half within' },
  { share: 0.9, title: '9 of 10 within' },
  { share: 0.95, title: '19 of 20 within' },
];

/** Lead times and kept promises by class of jobs, each with its interval. */
export function leadTimeTable(jobs: readonly JobClass[], footnotes: Footnotes, style: Style): string {
  const unit = unitOf(jobs);
  const columns = [
    words('jobs'),
    numbers('played'),
    ...SHOWN.map(({ title }) => numbers(`${title}, ${unit.many}`)),
    numbers('9 of 10, one period'),
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

/** Hours for a lab in which nearly every job is finished within two days. */
function unitOf(jobs: readonly JobClass[]): Unit {
  const slowest = jobs.flatMap((job) => {
    const found = percentile(job, 0.95)?.longRun;
    return found?.kind === 'estimate' ? [found.value] : [];
  });
  return slowest.length > 0 && Math.max(...slowest) < 2 * DAYS.size ? HOURS : DAYS;
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
