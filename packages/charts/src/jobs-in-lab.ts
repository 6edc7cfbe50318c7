import { type Band, type Estimate, meanOfBand, type Results, trendOf } from '@buildweek/results';
import { bandLayers, bandRows } from './band-layers.ts';
import { CHART_WIDTH, type Chart, type ChartSize } from './chart.ts';
import { formatEstimate, formatPlain, JOBS, PLAIN } from './format.ts';
import { intervalWords, weeksWords } from './interval-words.ts';
import { themeFor } from './theme.ts';
import { weekAxis } from './time-axes.ts';
import { dateOfWeek } from './week-dates.ts';

/** A difference of less than this share is not worth a title. */
const LARGE_SHARE = 0.25;

interface Week {
  readonly week: number;
  readonly jobs: Estimate;
}

/** The fullest week where it stands out clearly: its whole interval lies far above the average. */
function outstandingWeek(band: Band): Week | null {
  const index = band.value.indexOf(Math.max(...band.value));
  const [value, low, high] = [band.value[index], band.low[index], band.high[index]];
  if (value === undefined || low === undefined || high === undefined) return null;
  if (low <= (1 + LARGE_SHARE / 2) * meanOfBand(band).value) return null;
  return {
    week: index + 1,
    jobs: { kind: 'estimate', value, low, high, level: band.level, replications: band.replications },
  };
}

/** What is most worth saying: a lasting change from the first to the last weeks, a week that stands out, the average. */
function titleOf(results: Results): string {
  const { jobsInLab } = results.flow;
  const average = formatEstimate(meanOfBand(jobsInLab), JOBS);
  const trend = trendOf(jobsInLab);
  const most = outstandingWeek(jobsInLab);
  const isLarge =
    trend.kind !== 'steady' && Math.abs(trend.to.value - trend.from.value) > LARGE_SHARE * trend.from.value;
  if (most !== null && !isLarge) {
    const date = dateOfWeek(results.lab.startDate, most.week)?.long;
    const when = date === undefined ? `week ${most.week}` : `week ${most.week}, ${date}`;
    return `Most jobs in the lab in ${when}: ${formatEstimate(most.jobs, PLAIN)}; on average ${formatEstimate(meanOfBand(jobsInLab), PLAIN)}`;
  }
  if (trend.kind === 'steady') {
    return `${average} are in the lab on average, in the last weeks no more and no fewer than in the first`;
  }
  const verb = trend.kind === 'grows' ? 'grow' : 'fall';
  return `The jobs in the lab ${verb} from ${formatEstimate(trend.from, PLAIN)} to ${formatEstimate(trend.to, PLAIN)} in ${weeksWords(results.run)}`;
}

/** Jobs in the lab, waiting or in work, for each measured week. */
export function jobsInLab(results: Results, size: ChartSize): Chart {
  const band = results.flow.jobsInLab;
  return {
    id: 'jobs-in-lab',
    title: titleOf(results),
    description:
      `Jobs in the lab, waiting or in work, averaged over each of ${weeksWords(results.run)}: ` +
      `${band.value.map(formatPlain).join(', ')}; ${formatEstimate(meanOfBand(band), JOBS)} on average.`,
    spec: {
      config: themeFor(size),
      width: CHART_WIDTH[size] - 70,
      height: size === 'wide' ? 190 : 150,
      layer: bandLayers(bandRows(band, (index) => index + 1)),
      encoding: {
        x: weekAxis(results, size),
        y: {
          type: 'quantitative',
          axis: { title: 'jobs in the lab', tickCount: 5 },
          scale: { domain: [0, Math.max(1, ...band.high) * 1.05] },
        },
      },
    },
    footnote: `Line: average of each week. Shaded: ${intervalWords(results.run)}. First and last are the first and last quarter of the weeks.`,
  };
}
