import type { LearnedRate } from '@buildweek/results';
import type { Chart, ChartSize, Layer } from '../chart.ts';
import { formatCount, formatLevel, formatShare, shorten } from '../format.ts';
import { INK, LINE } from '../palette.ts';
import { plotWidth, ROW, rowAxis, rowEnds, rowNames } from '../row-axis.ts';
import { themeFor } from '../theme.ts';

const STEP: Readonly<Record<ChartSize, number>> = { wide: 36, narrow: 54 };
/** How far above the middle of its row a name stands on a narrow chart. */
const LIFT = 10;

/** Share of the builds that failed, by group of machines. */
export function failedBuilds(failures: readonly LearnedRate[], level: number, size: ChartSize): Chart {
  const worst = failures.reduce<LearnedRate | null>(
    (most, one) => (most === null || one.estimate.value > most.estimate.value ? one : most),
    null,
  );
  const counted = failures.map(
    (one) =>
      `${formatCount(one.counted)} of ${formatCount(one.among)} runs, ${formatShare(one.estimate.value)}`,
  );
  const names = failures.map(({ of }, row) =>
    size === 'wide' ? { name: of } : { name: of, suffix: `: ${counted[row] ?? ''}` },
  );
  const ends = { title: 'failed', words: size === 'wide' ? counted : [] };
  const width = plotWidth(names, ends, size);
  const top = Math.max(0.01, ...failures.map(({ estimate }) => estimate.high)) * 1.1;
  return {
    id: 'failed-builds',
    title:
      worst === null
        ? 'No run is recorded'
        : `Builds fail most on “${shorten(worst.of, 40)}”: ${formatShare(worst.estimate.value)}`,
    description: failures
      .map(
        ({ of, estimate }, row) =>
          `${of}: ${counted[row]} (${formatShare(estimate.low)} to ${formatShare(estimate.high)}).`,
      )
      .join(' '),
    spec: {
      config: themeFor(size),
      width,
      height: STEP[size] * failures.length,
      layer: [...marks(failures), ...rowNames(names, size, LIFT), ...rowEnds(ends, width, size)],
      encoding: {
        x: {
          type: 'quantitative',
          axis: { title: 'share of builds that failed', format: '.0%', tickCount: 5 },
          scale: { domain: [0, Math.min(1, top)], nice: false },
        },
        y: rowAxis(failures.length),
      },
    },
    footnote: `Lines: exact ${formatLevel(level)} intervals.`,
  };
}

function marks(failures: readonly LearnedRate[]): Layer[] {
  const values = failures.map(({ estimate: { value, low, high } }, row) => ({ row, value, low, high }));
  return [
    {
      data: { values },
      mark: { type: 'rule', color: INK, strokeWidth: 1.6 },
      encoding: { x: { field: 'low', type: 'quantitative' }, x2: { field: 'high' }, y: ROW },
    },
    {
      data: { values },
      mark: { type: 'point', filled: true, color: LINE, opacity: 1, size: 60 },
      encoding: { x: { field: 'value', type: 'quantitative' }, y: ROW },
    },
  ];
}
