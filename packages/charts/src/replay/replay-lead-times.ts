import { formatNumber, type ReplayAnswer } from '@buildweek/results';
import { CHART_WIDTH, type Chart, type ChartSize } from '../chart.ts';
import { formatShare } from '../format.ts';
import { OUTER_BAND } from '../palette.ts';
import { themeFor } from '../theme.ts';
import { EXPECTED, HAPPENED, namedLine } from './band-legend.ts';
import { replayUnit } from './replay-unit.ts';

/** How lead times are spread: the share of jobs that took at most so long, what happened in the band of the model. */
export function replayLeadTimes(answer: ReplayAnswer, size: ChartSize): Chart {
  const unit = replayUnit(answer);
  const rows = answer.leadTimes.map(({ share, observed, expected, low, high }) => ({
    at: share,
    observed: observed / unit.size,
    expected: expected / unit.size,
    low: low / unit.size,
    high: high / unit.size,
  }));
  const days = (value: number): string => formatNumber(value, unit.leastDecimals);
  const nine = rows.find(({ at }) => at === 0.9);
  const top = Math.max(1e-9, ...rows.flatMap(({ observed, high }) => [observed, high]));
  return {
    id: 'replay-lead-times',
    title:
      nine === undefined
        ? 'How long jobs took'
        : `Nine of ten jobs took at most ${days(nine.observed)} ${unit.many}; the model expects ${days(nine.expected)} (${days(nine.low)} to ${days(nine.high)})`,
    description: rows
      .map(
        ({ at, observed, expected, low, high }) =>
          `${formatShare(at)} of the jobs took at most ${days(observed)} ${unit.many}, expected ${days(expected)} (${days(low)} to ${days(high)}).`,
      )
      .join(' '),
    spec: {
      config: themeFor(size),
      width: CHART_WIDTH[size] - (size === 'wide' ? 90 : 74),
      height: size === 'wide' ? 260 : 220,
      layer: [
        {
          data: { values: rows },
          mark: { type: 'area', orient: 'horizontal', color: OUTER_BAND, opacity: 1 },
          encoding: {
            y: { field: 'at', type: 'quantitative' },
            x: { field: 'low', type: 'quantitative' },
            x2: { field: 'high' },
          },
        },
        ...namedLine(rows, 'expected', EXPECTED, true, 'y'),
        ...namedLine(rows, 'observed', HAPPENED, true, 'y'),
      ],
      encoding: {
        x: {
          type: 'quantitative',
          axis: { title: `at most so many ${unit.many} by the clock`, tickCount: size === 'wide' ? 10 : 5 },
          scale: { domain: [0, 1.03 * top], nice: false },
        },
        y: {
          type: 'quantitative',
          axis: { title: size === 'wide' ? 'share of the jobs' : 'of the jobs', format: '.0%', tickCount: 5 },
          scale: { domain: [0, 1], nice: false },
        },
      },
    },
    footnote: `Band: of the check, from ${answer.run.replications} replications. A job that was not finished by the end of the judged weeks counts up to there, in the log as in the play. Nights, weekends and breaks count.`,
  };
}
