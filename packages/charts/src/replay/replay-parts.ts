import type { HeldPart, ReplayAnswer } from '@buildweek/results';
import { formatNumber } from '@buildweek/results';
import type { Chart, ChartSize } from '../chart.ts';
import { INK, LINE, MUTED_INK, OUTER_BAND, SECOND_LINE } from '../palette.ts';
import { plotWidth, ROW, rowAxis, rowEnds, rowNames } from '../row-axis.ts';
import { themeFor } from '../theme.ts';
import { EXPECTED, HAPPENED } from './band-legend.ts';
import { replayUnit } from './replay-unit.ts';

const STEP: Readonly<Record<ChartSize, number>> = { wide: 30, narrow: 46 };

const ENDS: Readonly<Record<HeldPart['outcome'], string>> = {
  'as modelled': 'as modelled',
  slower: 'slower',
  faster: 'faster',
  otherwise: 'differs',
};

/** Average lead times of each part: what happened, the model, and the band of the check. */
export function replayParts(answer: ReplayAnswer, size: ChartSize): Chart {
  const unit = replayUnit(answer);
  const { parts } = answer;
  const rows = parts.map(({ leadTime }, row) => ({
    row,
    observed: leadTime.observed / unit.size,
    expected: leadTime.expected / unit.size,
    low: leadTime.low / unit.size,
    high: leadTime.high / unit.size,
  }));
  const names = parts.map(({ part }) => ({ name: part }));
  const ends = { title: 'verdict', words: parts.map(({ outcome }) => ENDS[outcome]) };
  const width = plotWidth(names, ends, size);
  const top = Math.max(1e-9, ...rows.flatMap(({ observed, high }) => [observed, high]));
  const apart = parts.filter(({ outcome }) => outcome !== 'as modelled').length;
  const marks = rows.flatMap(({ row, observed, expected }) => [
    { row, value: observed, which: HAPPENED },
    { row, value: expected, which: EXPECTED },
  ]);
  const legend = { title: null, orient: 'top' as const };
  const domain = [HAPPENED, EXPECTED];
  return {
    id: 'replay-parts',
    title:
      apart === 0
        ? 'Every part takes as long as modelled, within the band of the check'
        : `${apart} of ${parts.length} parts ${apart === 1 ? 'takes' : 'take'} longer or shorter than modelled`,
    description: parts
      .map(({ part, leadTime: { observed, expected, low, high }, outcome }) => {
        const [is, was, from, to] = [observed, expected, low, high].map((hours) =>
          formatNumber(hours / unit.size, 1),
        );
        return `${part}: ${is} ${unit.many} on average, expected ${was} (${from} to ${to}), ${ENDS[outcome]}.`;
      })
      .join(' '),
    spec: {
      config: themeFor(size),
      width,
      height: STEP[size] * Math.max(1, rows.length),
      layer: [
        {
          data: { values: rows },
          mark: { type: 'bar', height: 13, color: OUTER_BAND, stroke: MUTED_INK, strokeWidth: 0.6 },
          encoding: { x: { field: 'low', type: 'quantitative' }, x2: { field: 'high' }, y: ROW },
        },
        {
          data: { values: marks },
          mark: { type: 'point', filled: true, opacity: 1, size: 74, stroke: INK, strokeWidth: 0.8 },
          encoding: {
            x: { field: 'value', type: 'quantitative' },
            y: ROW,
            fill: { field: 'which', type: 'nominal', scale: { domain, range: [SECOND_LINE, LINE] }, legend },
            shape: {
              field: 'which',
              type: 'nominal',
              scale: { domain, range: ['diamond', 'circle'] },
              legend,
            },
          },
        },
        ...rowNames(names, size, 10),
        ...rowEnds(ends, width, size),
      ],
      encoding: {
        x: {
          type: 'quantitative',
          axis: {
            title: `average lead time, ${unit.many} by the clock`,
            tickCount: size === 'wide' ? 10 : 5,
          },
          scale: { domain: [0, 1.03 * top], nice: false },
        },
        y: rowAxis(rows.length),
      },
    },
    footnote: 'Bar: band of the check, which holds for all parts, weeks and measures together.',
  };
}
