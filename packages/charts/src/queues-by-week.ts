import { joinWords, periodName, type Queue, type Results, trendOf } from '@buildweek/results';
import { bandLayers, bandRows } from './band-layers.ts';
import { CHART_WIDTH, type Chart, type ChartSize, type LayeredSpec } from './chart.ts';
import { formatPlain } from './format.ts';
import { intervalWords } from './interval-words.ts';
import { drawnWords, queueTitle, queueWords, rankedQueues } from './ranked-queues.ts';
import { type Place, placeOf } from './small-multiples.ts';
import { themeFor } from './theme.ts';
import { weekAxis } from './time-axes.ts';

const COLUMNS: Readonly<Record<ChartSize, number>> = { wide: 3, narrow: 1 };

function panel(
  results: Results,
  size: ChartSize,
  queue: Queue,
  place: Place,
  top: number,
  columns: number,
): LayeredSpec {
  const width = Math.floor(CHART_WIDTH[size] / columns) - (size === 'wide' ? 66 : 56);
  return {
    title: queueTitle(queue, size, width),
    width,
    height: size === 'wide' ? 90 : 80,
    layer: bandLayers(bandRows(queue.byWeek, (week) => week + 1)),
    encoding: {
      x: weekAxis(results, 'narrow', place.bottom),
      y: {
        type: 'quantitative',
        axis: { title: place.left ? 'jobs waiting' : null, tickCount: 4 },
        scale: { domain: [0, top] },
      },
    },
  };
}

function titleOf(results: Results, queues: readonly Queue[]): string {
  const growing = queues
    .filter((queue) => trendOf(queue.byWeek).kind === 'grows')
    .map((queue) => queueWords(queue));
  if (growing.length === 0) return `No queue grows over the ${periodName(results.run.weeks)}`;
  return `Waiting for ${joinWords(growing)} grows over the ${periodName(results.run.weeks)}`;
}

/** Length of each queue over the measured weeks, biggest queue first. */
export function queuesByWeek(results: Results, size: ChartSize): Chart {
  const queues = rankedQueues(results);
  const columns = Math.min(COLUMNS[size], queues.length);
  const top = Math.max(0.1, ...queues.flatMap((queue) => queue.byWeek.high)) * 1.05;
  return {
    id: 'queues-by-week',
    title: titleOf(results, queues),
    description: `Jobs waiting in each queue, week by week. ${queues
      .map((queue) => `${queue.name}: ${queue.byWeek.value.map(formatPlain).join(', ')}.`)
      .join(' ')}`,
    spec: {
      config: themeFor(size),
      columns,
      concat: queues.map((queue, index) =>
        panel(results, size, queue, placeOf(index, queues.length, columns), top, columns),
      ),
    },
    footnote:
      'Beside each name: jobs waiting on average. All charts have the same scale. ' +
      `Shaded: ${intervalWords(results.run)}. Growth is said only where the intervals of the first and the last ` +
      `quarter of the weeks do not meet.${drawnWords(results)}`,
  };
}
