import type { ComparisonAnswer, Estimate, PlanMeasure, PlanPair } from '@buildweek/results';
import { writtenFigure, writtenUnit } from '@buildweek/results';
import type { Chart, ChartSize, Layer } from '../chart.ts';
import { formatLevel, shorten } from '../format.ts';
import { INK, LINE, MUTED_INK, PAPER, SECOND_LINE } from '../palette.ts';
import { plotWidth, ROW, rowAxis, rowEnds, rowNames } from '../row-axis.ts';
import { themeFor } from '../theme.ts';

const STEP: Readonly<Record<ChartSize, number>> = { wide: 30, narrow: 44 };
/** Shares of the other plan's value below which an axis makes too much of very little. */
const LEAST_REACH = 0.05;
const OUTCOMES = ['better', 'worse', 'neither, or not told apart'] as const;

interface DifferenceRow {
  readonly measure: PlanMeasure;
  readonly difference: Estimate;
  /** As shares of the value of the plan that is compared with. */
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly outcome: (typeof OUTCOMES)[number];
}

/** Measures of which both a value and a difference are known, and whose value is not zero. */
function rowsOf(before: readonly PlanMeasure[], pair: PlanPair): DifferenceRow[] {
  return before.flatMap((measure, index): DifferenceRow[] => {
    const found = pair.differences[index];
    if (found?.difference.kind !== 'estimate' || measure.value.kind !== 'estimate') return [];
    const { difference, outcome } = found;
    const base = Math.abs(measure.value.value);
    if (base === 0) return [];
    return [
      {
        measure,
        difference,
        value: difference.value / base,
        low: difference.low / base,
        high: difference.high / base,
        outcome: outcome === 'better' || outcome === 'worse' ? outcome : 'neither, or not told apart',
      },
    ];
  });
}

function differenceWords({ measure, difference }: DifferenceRow, currency: string | null): string {
  const unit = writtenUnit(measure.unit, [difference.value], currency);
  const points = measure.unit === 'share' ? { ...unit, one: 'points', many: 'points' } : unit;
  const { value, range } = writtenFigure(difference, points);
  const text = `${value} ${Number(value) === 1 ? points.one : points.many}${range === null ? '' : ` (${range.low} to ${range.high})`}`;
  return difference.value > 0 && !text.startsWith('0') ? `+${text}` : text;
}

function marks(rows: readonly DifferenceRow[]): Layer[] {
  const values = rows.map(({ value, low, high, outcome }, row) => ({ row, value, low, high, outcome }));
  const colours = { domain: [...OUTCOMES], range: [LINE, SECOND_LINE, PAPER] };
  const legend = { title: null, orient: 'top' as const };
  return [
    {
      data: { values: [{ none: 0 }] },
      mark: { type: 'rule', color: MUTED_INK, strokeWidth: 1.5 },
      encoding: { x: { field: 'none', type: 'quantitative' } },
    },
    {
      data: { values },
      mark: { type: 'rule', color: INK, strokeWidth: 1.8 },
      encoding: { x: { field: 'low', type: 'quantitative' }, x2: { field: 'high' }, y: ROW },
    },
    {
      data: { values },
      mark: { type: 'point', filled: true, size: 110, opacity: 1, stroke: INK, strokeWidth: 1.4 },
      encoding: {
        x: { field: 'value', type: 'quantitative' },
        y: ROW,
        fill: { field: 'outcome', type: 'nominal', scale: colours, legend },
        shape: {
          field: 'outcome',
          type: 'nominal',
          scale: { domain: [...OUTCOMES], range: ['circle', 'diamond', 'square'] },
          legend,
        },
      },
    },
  ];
}

/**
 * What one plan changes against another, measure by measure, as shares of the other plan's values.
 *
 * @param position of the pair in the answer
 * @returns null when there is nothing to draw
 */
function differenceChart(answer: ComparisonAnswer, position: number, size: ChartSize): Chart | null {
  const pair = answer.pairs[position];
  const before = answer.plans.find(({ name }) => name === pair?.against)?.measures;
  if (pair === undefined || before === undefined) return null;
  const rows = rowsOf(before, pair);
  if (rows.length === 0) return null;
  const words = rows.map((row) => differenceWords(row, answer.currency));
  const names = rows.map(({ measure }) => ({ name: measure.name }));
  const ends = { title: 'difference', words: size === 'wide' ? words : [] };
  const width = plotWidth(names, ends, size);
  const reach = Math.max(LEAST_REACH, ...rows.flatMap(({ low, high }) => [Math.abs(low), Math.abs(high)]));
  return {
    id: `differences-${position + 1}`,
    title: `What “${shorten(pair.plan, 60)}” changes against “${shorten(pair.against)}”`,
    description: rows.map(({ measure }, row) => `${measure.name}: ${words[row]}.`).join(' '),
    spec: {
      config: themeFor(size),
      width,
      height: STEP[size] * rows.length,
      layer: [...marks(rows), ...rowNames(names, size, 10), ...rowEnds(ends, width, size)],
      encoding: {
        x: {
          type: 'quantitative',
          scale: { domain: [-1.05 * reach, 1.05 * reach], nice: false },
          axis: {
            title: `share of the value of “${shorten(pair.against, 30)}”`,
            format: '+.0%',
            tickCount: size === 'wide' ? 8 : 4,
          },
        },
        y: rowAxis(rows.length),
      },
    },
    footnote: `Marks: differences on the same random numbers, in ${answer.run.replications} replications. Lines: their intervals, each ${formatLevel(answer.differencesLevel)}, so that all hold at once with ${formatLevel(answer.run.level)} confidence. Where a line crosses the middle, the two plans are not told apart.`,
  };
}

/** The charts of a comparison: one for each pair. */
export function comparisonChartsOf(answer: ComparisonAnswer, size: ChartSize = 'wide'): Chart[] {
  return answer.pairs.flatMap((_, position) => differenceChart(answer, position, size) ?? []);
}
