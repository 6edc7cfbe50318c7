import {
  momentText,
  type OpenJob,
  type PromiseAnswer,
  type PromisedDate,
  type PromiseWay,
} from '@buildweek/results';
import type { Chart, ChartSize, Layer, LayeredSpec } from '../chart.ts';
import { BAND, CLOSED_HOURS, LINE, SECOND_LINE } from '../palette.ts';
import { plotWidth, ROW, rowAxis, rowEnds, rowNames } from '../row-axis.ts';
import { themeFor } from '../theme.ts';
import { dayAxis } from './day-axis.ts';

const STEP: Readonly<Record<ChartSize, number>> = { wide: 26, narrow: 44 };
const LIFT = 8;
/** Chance of the date that a dot stands for. */
const TOLD = 0.8;
/** Room behind the last date, as a share of the axis. */
const BEHIND = 1.04;
/** Jobs in one chart; those with the least chance of being on time, and then the first due. */
const MOST_JOBS = 24;

interface DateRow {
  readonly name: string;
  readonly dates: readonly PromisedDate[];
  readonly due: PromiseWay['due'];
  readonly end: string;
}

/** The charts of promised dates: the ways of making a request, and the jobs that stand in the lab. */
export function promiseChartsOf(answer: PromiseAnswer, size: ChartSize): Chart[] {
  const { request, openJobs } = answer;
  return [
    ...(request === null
      ? []
      : [
          datesChart(
            answer,
            size,
            'ways',
            'When it is ready, by every way of making it',
            request.ways.map((way) => ({
              name: way.route ?? 'sent out',
              dates: way.dates,
              due: way.due,
              end: toldDate(way.dates),
            })),
            'ready by, 80 %',
          ),
        ]),
    ...(openJobs === null || openJobs.length === 0
      ? []
      : [
          datesChart(
            answer,
            size,
            'open-jobs',
            openJobs.length > MOST_JOBS
              ? `When the ${MOST_JOBS} jobs that are most at risk will be ready`
              : 'When the jobs in the lab will be ready',
            mostAtRisk(openJobs).map((job) => ({
              name: `${job.job}: ${job.quantity} × ${job.part}`,
              dates: job.dates,
              due: job.due,
              end: chanceText(job),
            })),
            'on time',
          ),
        ]),
  ];
}

function datesChart(
  answer: PromiseAnswer,
  size: ChartSize,
  id: string,
  title: string,
  rows: readonly DateRow[],
  ends: string,
): Chart {
  const names = rows.map(({ name }) => ({ name }));
  const endWords = { title: ends, words: rows.map(({ end }) => end) };
  const width = plotWidth(names, endWords, size);
  const hours =
    BEHIND *
    Math.max(
      24,
      ...rows.flatMap(({ dates, due }) => [
        ...dates.flatMap(({ ready }) => ready?.hours ?? []),
        due?.hours ?? 0,
      ]),
    );
  const spec: LayeredSpec = {
    width,
    height: STEP[size] * rows.length,
    config: themeFor(size),
    encoding: { x: dayAxis(answer.now, hours, width, size), y: rowAxis(rows.length) },
    layer: [
      closedLayer(answer, hours),
      ...spreadLayers(rows),
      ...rowNames(names, size, LIFT),
      ...rowEnds(endWords, width, size),
    ],
  };
  return {
    id,
    title,
    description: rows.map(describe).join(' '),
    spec,
    footnote:
      'A bar reaches from the date that half of the plays keep to the one that 95 % keep; the dot is the 80 % date. A diamond is the promise that stands, or the usual one. The ground is darker where the lab is closed.',
  };
}

function closedLayer({ closed }: PromiseAnswer, hours: number): Layer {
  const spans = closed
    .filter(({ fromHour }) => fromHour < hours)
    .map(({ fromHour, toHour }) => ({ from: Math.max(0, fromHour), to: Math.min(toHour, hours) }));
  return {
    data: { values: spans },
    mark: { type: 'rect', color: CLOSED_HOURS, opacity: 1 },
    encoding: {
      x: { field: 'from', type: 'quantitative' },
      x2: { field: 'to' },
      y: { value: 0 },
      y2: { value: 'height' },
    },
  };
}

function spreadLayers(rows: readonly DateRow[]): Layer[] {
  const X = { field: 'hours', type: 'quantitative' } as const;
  const spans = rows.flatMap(({ dates }, row) => {
    const ready = dates.flatMap((date) => date.ready?.hours ?? []);
    return ready.length === 0 ? [] : [{ row, from: Math.min(...ready), to: Math.max(...ready) }];
  });
  const told = rows.flatMap(({ dates }, row) => {
    const ready = dates.find(({ probability }) => probability === TOLD)?.ready;
    return ready == null ? [] : [{ row, hours: ready.hours }];
  });
  const dues = rows.flatMap(({ due }, row) => (due === null ? [] : [{ row, hours: Math.max(0, due.hours) }]));
  return [
    {
      data: { values: spans },
      mark: { type: 'bar', height: 9, color: BAND, stroke: LINE, strokeWidth: 0.6 },
      encoding: { x: { field: 'from', type: 'quantitative' }, x2: { field: 'to' }, y: ROW },
    },
    {
      data: { values: told },
      mark: { type: 'point', filled: true, shape: 'circle', size: 70, color: LINE, opacity: 1 },
      encoding: { x: X, y: ROW },
    },
    {
      data: { values: dues },
      mark: {
        type: 'point',
        filled: false,
        shape: 'diamond',
        size: 80,
        stroke: SECOND_LINE,
        strokeWidth: 2,
        opacity: 1,
      },
      encoding: { x: X, y: ROW },
    },
  ];
}

function mostAtRisk(openJobs: readonly OpenJob[]): OpenJob[] {
  const due = (job: OpenJob): number => job.due?.hours ?? Number.POSITIVE_INFINITY;
  const order = (a: OpenJob, b: OpenJob): number => compare(due(a), due(b));
  const shown = [...openJobs].sort((a, b) => chanceOf(a) - chanceOf(b) || order(a, b)).slice(0, MOST_JOBS);
  return shown.sort(order);
}

function compare(a: number, b: number): number {
  return a === b ? 0 : a - b;
}

function chanceOf({ onTime }: OpenJob): number {
  return onTime?.kind === 'estimate' ? onTime.value : 2;
}

function chanceText(job: OpenJob): string {
  return job.onTime?.kind === 'estimate' ? `${Math.round(100 * job.onTime.value)} %` : '';
}

function toldDate(dates: readonly PromisedDate[]): string {
  const ready = dates.find(({ probability }) => probability === TOLD)?.ready;
  return ready == null ? 'not given' : momentText(ready.at);
}

function describe({ name, dates, due, end }: DateRow): string {
  const words = dates.flatMap(({ probability, ready }) =>
    ready === null ? [] : [`${momentText(ready.at)} with ${Math.round(100 * probability)} %`],
  );
  const promised =
    due === null ? '' : `; promised for ${momentText(due.at)}${end.endsWith('%') ? `, kept in ${end}` : ''}`;
  return `${name}: ${words.length === 0 ? 'no date is given' : words.join(', ')}${promised}.`;
}
