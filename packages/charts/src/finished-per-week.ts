import { type Band, meanOfBand, type Results } from '@buildweek/results';
import { type BandRow, bandLayers, bandRows } from './band-layers.ts';
import { CHART_WIDTH, type Chart, type ChartSize, type Layer, type LayeredSpec } from './chart.ts';
import { formatEstimate, formatPlain, JOBS, PARTS } from './format.ts';
import { intervalWords, weeksWords } from './interval-words.ts';
import { LINE, SECOND_LINE } from './palette.ts';
import { themeFor } from './theme.ts';
import { weekAxis } from './time-axes.ts';

const FINISHED = 'finished';
const ARRIVED = 'come in';

function arrivedLine(arrived: readonly BandRow[]): Layer {
  return {
    data: { values: [...arrived] },
    mark: { type: 'line', strokeWidth: 1.6 },
    encoding: {
      x: { field: 'x', type: 'quantitative' },
      y: { field: 'value', type: 'quantitative' },
      color: {
        datum: ARRIVED,
        type: 'nominal',
        scale: { domain: [FINISHED, ARRIVED], range: [LINE, SECOND_LINE] },
        legend: { title: null, orient: 'top', symbolType: 'stroke', symbolStrokeWidth: 2, offset: 4 },
      },
      strokeDash: {
        datum: ARRIVED,
        type: 'nominal',
        scale: {
          domain: [FINISHED, ARRIVED],
          range: [
            [1, 0],
            [5, 4],
          ],
        },
      },
    },
  };
}

function panel(
  results: Results,
  size: ChartSize,
  title: string,
  band: Band,
  extra: readonly Layer[],
): LayeredSpec {
  const top = Math.max(
    ...band.high,
    ...results.flow.arrivedJobs.value.map((value) => (extra.length > 0 ? value : 0)),
  );
  return {
    width: CHART_WIDTH[size] - 70,
    height: size === 'wide' ? 170 : 130,
    layer: [...bandLayers(bandRows(band, (index) => index + 1)), ...extra],
    encoding: {
      x: weekAxis(results, size),
      y: { type: 'quantitative', axis: { title, tickCount: 4 }, scale: { domain: [0, top * 1.05] } },
    },
  };
}

/** Finished jobs beside those that come in, and finished parts, for each measured week. */
export function finishedPerWeek(results: Results, size: ChartSize): Chart {
  const { arrivedJobs, finishedJobs, finishedParts } = results.flow;
  const jobs = formatEstimate(meanOfBand(finishedJobs), JOBS);
  const parts = formatEstimate(meanOfBand(finishedParts), PARTS);
  const arrived = formatEstimate(meanOfBand(arrivedJobs), JOBS);
  return {
    id: 'finished-per-week',
    title: `The lab finishes ${jobs} and ${parts} a week`,
    description:
      `Finished jobs and parts for each of ${weeksWords(results.run)}. In an average week ${arrived} come in, ` +
      `${jobs} are finished, with ${parts}. Jobs finished week by week: ` +
      `${finishedJobs.value.map(formatPlain).join(', ')}. Parts finished week by week: ` +
      `${finishedParts.value.map(formatPlain).join(', ')}.`,
    spec: {
      config: themeFor(size),
      vconcat: [
        panel(results, size, 'jobs per week', finishedJobs, [
          arrivedLine(bandRows(arrivedJobs, (index) => index + 1)),
        ]),
        panel(results, size, 'parts per week', finishedParts, []),
      ],
    },
    footnote: `Solid line: finished. Dashed line: jobs that come in. Shaded: ${intervalWords(results.run)}.`,
  };
}
