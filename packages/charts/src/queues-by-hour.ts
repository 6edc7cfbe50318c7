import type { Queue, Results } from '@buildweek/results';
import { bandLayers, bandRows } from './band-layers.ts';
import { CHART_WIDTH, type Chart, type ChartSize, type LayeredSpec } from './chart.ts';
import { AT_A_TIME, formatEstimate, formatHourOfWeek, formatPlain } from './format.ts';
import { intervalWords } from './interval-words.ts';
import { drawnWords, peakHour, queueTitle, queueWords, rankedQueues } from './ranked-queues.ts';
import { type Place, placeOf } from './small-multiples.ts';
import { themeFor } from './theme.ts';
import { closedLayers, hourOfWeekAxis, midnightLayer } from './time-axes.ts';

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
    height: size === 'wide' ? 110 : 90,
    layer: [
      ...closedLayers(results),
      midnightLayer(),
      ...bandLayers(bandRows(queue.byHourOfWeek, (hour) => hour + 0.5)),
    ],
    encoding: {
      x: hourOfWeekAxis(size, place.bottom),
      y: {
        type: 'quantitative',
        axis: { title: place.left ? 'jobs waiting' : null, tickCount: 4 },
        scale: { domain: [0, top] },
      },
    },
  };
}

/** Length of each queue over the hours of the week, biggest queue first. */
export function queuesByHour(results: Results, size: ChartSize): Chart {
  const queues = rankedQueues(results);
  const columns = Math.min(COLUMNS[size], queues.length);
  const [longest] = queues;
  const top = Math.max(0.1, ...queues.flatMap((queue) => queue.byHourOfWeek.high)) * 1.05;
  const peak = longest === undefined ? 0 : peakHour(longest);
  return {
    id: 'queues-by-hour',
    title:
      longest === undefined
        ? 'No job waits for anything'
        : `The longest queue is for ${queueWords(longest)}: ${formatEstimate(longest.meanLength, AT_A_TIME)} jobs ` +
          `on average, ${formatPlain(longest.byHourOfWeek.value[peak] ?? 0)} on ${formatHourOfWeek(peak)}`,
    description: `Jobs waiting in each queue over the hours of an average week. ${queues
      .map((queue) => {
        const hour = peakHour(queue);
        return (
          `${queue.name}: ${formatEstimate(queue.meanLength, AT_A_TIME)} on average, most on ${formatHourOfWeek(hour)} ` +
          `with ${formatPlain(queue.byHourOfWeek.value[hour] ?? 0)}.`
        );
      })
      .join(' ')}`,
    spec: {
      config: themeFor(size),
      columns,
      concat: queues.map((queue, index) =>
        panel(results, size, queue, placeOf(index, queues.length, columns), top, columns),
      ),
    },
    footnote:
      'Beside each name: jobs waiting on average. All charts have the same scale. Grey ground: nobody is on duty. ' +
      `Shaded: ${intervalWords(results.run)}.${drawnWords(results)}`,
  };
}
