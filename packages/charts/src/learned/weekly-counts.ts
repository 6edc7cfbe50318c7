import type { LearnedWeeks } from '@buildweek/results';
import { CHART_WIDTH, type Chart, type ChartSize, type Layer } from '../chart.ts';
import { formatPlain, formatShare } from '../format.ts';
import { BAND, INK, LINE, OUTER_BAND, SECOND_LINE } from '../palette.ts';
import { themeFor } from '../theme.ts';
import { weekAxis } from '../time-axes.ts';

/** Counts of weeks with the band of Poisson counts of the same mean. */
export function weeklyCounts(weeks: LearnedWeeks, size: ChartSize): Chart {
  const { counts, mean, low, high, dispersion, firstDay } = weeks;
  const pValue = dispersion?.pValue ?? null;
  const rows = counts.map((count, index) => ({
    x: index + 1,
    count,
    outside: count < low || count > high ? 'outside the band' : 'within the band',
  }));
  const outside = rows.filter((row) => row.outside === 'outside the band').length;
  const differ =
    pValue === null
      ? ''
      : pValue < 0.05
        ? ': weeks differ by more than chance'
        : ': weeks differ by chance alone';
  return {
    id: 'weekly-counts',
    title: `${formatPlain(mean)} jobs a week${differ}`,
    description: `Jobs asked for week by week: ${counts.join(', ')}. Chance alone would put 95 of 100 weeks at ${low} to ${high}; ${outside} of ${counts.length} lie outside.`,
    spec: {
      config: themeFor(size),
      width: CHART_WIDTH[size] - 70,
      height: size === 'wide' ? 190 : 150,
      layer: [...bandOf(low, high, counts.length), meanRule(mean), ...points(rows)],
      encoding: {
        x: weekAxis({ lab: { startDate: firstDay }, run: { weeks: counts.length } }, size),
        y: { type: 'quantitative', axis: { title: 'jobs asked for', tickCount: 4 }, scale: { zero: true } },
      },
    },
    footnote: `Points: weeks of the log. Line: their mean. Shaded: where 95 of 100 weeks lie when each job comes by itself (Poisson counts of that mean).${pValue === null ? '' : ` Counts that vary as much come about by chance in ${pValue < 0.001 ? 'less than one of a thousand logs' : `${formatShare(pValue)} of logs`}.`}`,
  };
}

function bandOf(low: number, high: number, weeks: number): Layer[] {
  return [
    {
      data: { values: [{ from: 1, to: Math.max(2, weeks), low, high }] },
      mark: { type: 'rect', color: OUTER_BAND, stroke: BAND, opacity: 1 },
      encoding: {
        x: { field: 'from', type: 'quantitative' },
        x2: { field: 'to' },
        y: { field: 'low', type: 'quantitative' },
        y2: { field: 'high' },
      },
    },
  ];
}

function meanRule(mean: number): Layer {
  return {
    data: { values: [{ mean }] },
    mark: { type: 'rule', color: LINE, strokeWidth: 1.4 },
    encoding: { y: { field: 'mean', type: 'quantitative' } },
  };
}

function points(
  rows: readonly { readonly x: number; readonly count: number; readonly outside: string }[],
): Layer[] {
  const domain = ['within the band', 'outside the band'];
  const legend = { title: null, orient: 'top' as const };
  return [
    {
      data: { values: [...rows] },
      mark: { type: 'point', filled: true, opacity: 1, size: 46, stroke: INK, strokeWidth: 0.8 },
      encoding: {
        x: { field: 'x', type: 'quantitative' },
        y: { field: 'count', type: 'quantitative' },
        color: { field: 'outside', type: 'nominal', scale: { domain, range: [LINE, SECOND_LINE] }, legend },
        shape: { field: 'outside', type: 'nominal', scale: { domain, range: ['circle', 'diamond'] }, legend },
      },
    },
  ];
}
