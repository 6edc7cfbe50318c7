import type { Results } from '@buildweek/results';
import { bandLayers, bandRows, meanOfBand, trendOf } from './band-layers.ts';
import { CHART_WIDTH, type Chart, type ChartSize } from './chart.ts';
import { formatEstimate, formatPlain, JOBS } from './format.ts';
import { intervalWords, periodWords } from './interval-words.ts';
import { themeFor } from './theme.ts';
import { weekAxis } from './time-axes.ts';

function titleOf(results: Results): string {
  const { jobsInLab } = results.flow;
  const trend = trendOf(jobsInLab);
  if (trend.kind === 'steady') {
    return `${formatEstimate(meanOfBand(jobsInLab), JOBS)} are in the lab, at the end as at the start`;
  }
  const verb = trend.kind === 'grows' ? 'grow' : 'fall';
  return `The jobs in the lab ${verb} from ${formatPlain(trend.from)} to ${formatPlain(trend.to)} in ${periodWords(results.run)}`;
}

/** Jobs in the lab, waiting or in work, for each measured week. */
export function jobsInLab(results: Results, size: ChartSize): Chart {
  const band = results.flow.jobsInLab;
  return {
    id: 'jobs-in-lab',
    title: titleOf(results),
    description:
      `Jobs in the lab, waiting or in work, averaged over each of ${periodWords(results.run)}: ` +
      `${band.value.map(formatPlain).join(', ')}; ${formatEstimate(meanOfBand(band), JOBS)} on average.`,
    spec: {
      config: themeFor(size),
      width: CHART_WIDTH[size] - 70,
      height: size === 'wide' ? 190 : 150,
      layer: bandLayers(bandRows(band, (index) => index + 1)),
      encoding: {
        x: weekAxis(results.run, size),
        y: {
          type: 'quantitative',
          axis: { title: 'jobs in the lab', tickCount: 5 },
          scale: { domain: [0, Math.max(1, ...band.high) * 1.05] },
        },
      },
    },
    footnote: `Line: average of each week. Shaded: ${intervalWords(results.run)}.`,
  };
}
