import {
  type DoubtAnswer,
  type DoubtEnd,
  type DoubtsAnswer,
  type Estimate,
  writtenUnit,
} from '@buildweek/results';
import type { Chart, ChartSize, Layer } from '../chart.ts';
import { formatEstimate, formatLevel, formatShare, shorten } from '../format.ts';
import { BAND, INK, LINE, MUTED_INK } from '../palette.ts';
import { plotWidth, rowAxis, rowEnds, rowNames } from '../row-axis.ts';
import { themeFor } from '../theme.ts';

const STEP: Readonly<Record<ChartSize, number>> = { wide: 46, narrow: 62 };
/** How far the bars of either end lie from the middle of their row, in rows; narrow charts have names above. */
const APART: Readonly<Record<ChartSize, readonly [number, number]>> = {
  wide: [-0.17, 0.17],
  narrow: [0.05, 0.3],
};
const BAR = 13;
const ENDS = ['at the low end of its range', 'at the high end'] as const;

interface Bar extends Pick<Estimate, 'value' | 'low' | 'high'> {
  readonly lane: number;
  readonly end: (typeof ENDS)[number];
}

function barsOf(answer: DoubtsAnswer, size: ChartSize, unitSize: number): Bar[] {
  return answer.doubts.flatMap((doubt, row) =>
    [doubt.low, doubt.high].flatMap(({ difference }, end): Bar[] => {
      if (difference.kind !== 'estimate') return [];
      return [
        {
          lane: row + (APART[size][end] ?? 0),
          end: ENDS[end] ?? ENDS[0],
          value: difference.value / unitSize,
          low: difference.low / unitSize,
          high: difference.high / unitSize,
        },
      ];
    }),
  );
}

function marks(bars: readonly Bar[]): Layer[] {
  const y = { field: 'lane', type: 'quantitative' } as const;
  return [
    {
      data: { values: [...bars] },
      mark: { type: 'bar', height: BAR, stroke: INK, strokeWidth: 0.6 },
      encoding: {
        x: { field: 'value', type: 'quantitative' },
        x2: { datum: 0 },
        y,
        color: {
          field: 'end',
          type: 'nominal',
          scale: { domain: [...ENDS], range: [BAND, LINE] },
          legend: { title: null, orient: 'top', symbolType: 'square' },
        },
      },
    },
    {
      data: { values: [...bars] },
      mark: { type: 'rule', color: '#ffffff', strokeWidth: 3.4 },
      encoding: { x: { field: 'low', type: 'quantitative' }, x2: { field: 'high' }, y },
    },
    {
      data: { values: [...bars] },
      mark: { type: 'rule', color: INK, strokeWidth: 1.6 },
      encoding: { x: { field: 'low', type: 'quantitative' }, x2: { field: 'high' }, y },
    },
    {
      data: { values: [{ none: 0 }] },
      mark: { type: 'rule', color: MUTED_INK, strokeWidth: 1.5 },
      encoding: { x: { field: 'none', type: 'quantitative' } },
    },
  ];
}

/** "80 to 130 %". */
function rangeWords({ low, high }: DoubtAnswer): string {
  const percent = (factor: number): number => Number((factor * 100).toPrecision(3));
  return `${percent(low.factor)} to ${percent(high.factor)}\u00a0%`;
}

function endWords({ factor, difference }: DoubtEnd, unit: ReturnType<typeof writtenUnit>): string {
  if (difference.kind !== 'estimate') return `at ${formatShare(factor)} ${difference.reason}`;
  return `at ${formatShare(factor)} ${difference.value > 0 ? '+' : ''}${formatEstimate(difference, unit)}`;
}

/** What each doubt does by itself at either end of its range, the largest effect on top. */
export function tornado(answer: DoubtsAnswer, size: ChartSize): Chart {
  const { measure, doubts } = answer;
  const values = doubts.flatMap(({ low, high }) =>
    [low, high].flatMap(({ difference }) => (difference.kind === 'estimate' ? [difference.value] : [])),
  );
  const written = writtenUnit(measure.unit, values, null);
  const unit = measure.unit === 'share' ? { ...written, one: 'points', many: 'points' } : written;
  const bars = barsOf(answer, size, unit.size);
  const names = doubts.map(({ name }) => ({ name }));
  const ends = { title: 'range', words: size === 'wide' ? doubts.map(rangeWords) : [] };
  const drawnNames =
    size === 'wide' ? names : doubts.map((doubt) => ({ name: doubt.name, suffix: `, ${rangeWords(doubt)}` }));
  const [first] = doubts;
  return {
    id: 'tornado',
    title:
      first === undefined
        ? 'What each doubt does by itself'
        : `“${shorten(first.name, 50)}” changes “${shorten(measure.name, 60)}” most by itself`,
    description: doubts
      .map(({ name, low, high }) => `${name}: ${endWords(low, unit)}; ${endWords(high, unit)}.`)
      .join(' '),
    spec: {
      config: themeFor(size),
      width: plotWidth(names, ends, size),
      height: STEP[size] * doubts.length,
      layer: [
        ...marks(bars),
        ...rowNames(drawnNames, size, 8),
        ...rowEnds(ends, plotWidth(names, ends, size), size),
      ],
      encoding: {
        x: {
          type: 'quantitative',
          scale: { nice: true, zero: true },
          axis: {
            title: `change of “${shorten(measure.name, size === 'wide' ? 60 : 24)}”, ${unit.many}`,
            tickCount: size === 'wide' ? 8 : 4,
          },
        },
        y: rowAxis(doubts.length),
      },
    },
    footnote: `Bars: the change when only this differs from what the scenario says, on the same random numbers, in ${answer.run.replications} replications each. Lines: intervals, each ${formatLevel(Number(answer.differencesLevel.toFixed(4)))}, so that all hold at once with ${formatLevel(answer.run.level)} confidence. Where a line crosses zero, no effect can be told.`,
  };
}
