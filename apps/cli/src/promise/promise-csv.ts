import {
  type CsvCell,
  csvText,
  type EstimateOrRefused,
  type PromiseAnswer,
  type PromisedDate,
} from '@buildweek/results';
import { PROMISED } from '@buildweek/study';

const PERCENTS = PROMISED.map((probability) => `${Math.round(probability * 100)} %`);

/**
 * Promised dates as a table: the ways of making a request, or the jobs in the lab one to a row, and below them the
 * builds to start. Moments are those of the wall clock of the lab.
 */
export function promiseCsv(answer: PromiseAnswer): string {
  const { request, openJobs, day } = answer;
  const tables: CsvCell[][][] = [];
  if (request !== null) {
    tables.push([
      [
        'by',
        ...PERCENTS.map((percent) => `ready, ${percent}`),
        ...PERCENTS.map((percent) => `promise, ${percent}`),
      ],
      ...request.ways.map(({ route, dates }) => [
        route ?? 'sent out',
        ...datesOf(dates, 'ready'),
        ...datesOf(dates, 'promise'),
      ]),
    ]);
  }
  if (openJobs !== null) {
    tables.push([
      [
        'job',
        'part',
        'pieces',
        'rush',
        'stands at',
        'in',
        'arrived',
        'due',
        'chance of being on time',
        'mean',
        ...PERCENTS.map((percent) => `ready, ${percent}`),
        'why at risk',
        'what moved it',
      ],
      ...openJobs.map((job) => [
        job.job,
        job.part,
        job.quantity,
        job.rush ? 'rush' : 'normal',
        job.stage,
        job.machine,
        job.arrived,
        job.due?.at ?? null,
        shareOf(job.onTime),
        job.meanReady?.at ?? null,
        ...datesOf(job.dates, 'ready'),
        job.risk.join(' '),
        job.moved.join(' '),
      ]),
    ]);
  }
  if (day !== null) {
    tables.push([
      ['start on', 'jobs', 'usually', 'by', 'who', 'share of plays'],
      ...day.starts.map(({ machine, jobs, start, startBy, by, share }) => [
        machine,
        jobs.map(({ job, part, pieces }) => `${job}: ${pieces} × ${part}`).join('; '),
        start.at,
        startBy.at,
        by.join(' and '),
        share,
      ]),
    ]);
  }
  return csvText(tables.flatMap((table, index) => (index === 0 ? table : [[], ...table])));
}

function datesOf(dates: readonly PromisedDate[], which: 'ready' | 'promise'): CsvCell[] {
  return dates.map((date) => date[which]?.at ?? null);
}

function shareOf(estimate: EstimateOrRefused | null): number | null {
  return estimate?.kind === 'estimate' ? estimate.value : null;
}
