import {
  CENTS,
  type CostLine,
  type Estimate,
  type Money,
  moneyEstimateText,
  moneyFigure,
  type Results,
} from '@buildweek/results';
import type { Chart, ChartSize, Layer } from '../chart.ts';
import { formatShare } from '../format.ts';
import { intervalWords } from '../interval-words.ts';
import { BAND, INK, LINE, SECOND_LINE } from '../palette.ts';
import { plotWidth, ROW, rowAxis, rowEnds, rowNames } from '../row-axis.ts';
import { themeFor } from '../theme.ts';
import { COST_LABELS } from './cost-labels.ts';

const STEP: Readonly<Record<ChartSize, number>> = { wide: 30, narrow: 44 };
const BAR_HEIGHT: Readonly<Record<ChartSize, number>> = { wide: 16, narrow: 14 };
/** On a narrow chart the name stands above its bar. */
const LIFT = 10;

interface CostRow {
  readonly row: number;
  readonly name: string;
  readonly strong: boolean;
  readonly perPart: Estimate;
  readonly colour: string;
}

/** All costs first, then the largest first; of the material what was made twice stands behind it. */
function rowsOf({ costs, total, repeats }: Money): CostRow[] {
  const lines: { name: string; line: CostLine; strong: boolean; colour: string }[] = [
    { name: 'all costs', line: total, strong: true, colour: LINE },
    ...[...costs]
      .sort((one, other) => other.perYear.value - one.perYear.value)
      .flatMap((line) => [
        { name: COST_LABELS[line.kind], line, strong: false, colour: BAND },
        ...(line.kind === 'material' && repeats.perYear.value > 0
          ? [{ name: 'of it for parts made again', line: repeats, strong: false, colour: SECOND_LINE }]
          : []),
      ]),
  ];
  return lines.flatMap(({ line, ...rest }, row) =>
    line.perPart.kind === 'estimate' ? [{ row, perPart: line.perPart, ...rest }] : [],
  );
}

function layers(rows: readonly CostRow[], size: ChartSize): Layer[] {
  const values = rows.map(({ row, perPart: { value, low, high }, colour }) => ({
    row,
    value,
    low,
    high,
    colour,
    from: 0,
  }));
  return [
    {
      data: { values },
      mark: { type: 'bar', height: BAR_HEIGHT[size], orient: 'horizontal' },
      encoding: {
        x: { field: 'from', type: 'quantitative' },
        x2: { field: 'value' },
        y: ROW,
        color: { field: 'colour', type: 'nominal', scale: null },
      },
    },
    {
      data: { values },
      mark: { type: 'rule', color: INK, strokeWidth: 2 },
      encoding: { x: { field: 'low', type: 'quantitative' }, x2: { field: 'high' }, y: ROW },
    },
  ];
}

/** What a finished part costs, by what the money goes to. */
export function costSplit(results: Results, size: ChartSize): Chart[] {
  const { money } = results;
  const { perPart } = money?.total ?? {};
  if (money === null || perPart?.kind !== 'estimate') return [];
  const { currency } = money;
  const rows = rowsOf(money);
  const names = rows.map(({ name, strong }) => ({ name, strong }));
  const figures = rows.map((row) => {
    const { value, range } = moneyFigure(row.perPart, CENTS);
    return size === 'narrow' || range === null ? value : `${value} (${range})`;
  });
  const ends = { title: `${currency} per part`, words: figures };
  const width = plotWidth(names, ends, size);
  const [, most] = rows;
  const highest = Math.max(...rows.map((row) => row.perPart.high));
  return [
    {
      id: 'cost-split',
      title:
        `A finished part costs ${moneyEstimateText(perPart, currency, CENTS)}` +
        (most === undefined
          ? ''
          : `, most of it ${most.name} (${formatShare(most.perPart.value / perPart.value)})`),
      description: `Cost of a finished part. ${rows
        .map(({ name, perPart: cost }) => `${name}: ${moneyEstimateText(cost, currency, CENTS)}`)
        .join('; ')}.`,
      spec: {
        config: themeFor(size),
        width,
        height: STEP[size] * rows.length,
        layer: [...layers(rows, size), ...rowNames(names, size, LIFT), ...rowEnds(ends, width, size)],
        encoding: {
          x: {
            type: 'quantitative',
            scale: { domain: [0, Math.max(0.01, highest * 1.03)], nice: false },
            axis: { title: `${currency} per finished part`, tickCount: size === 'wide' ? 8 : 4 },
          },
          y: rowAxis(rows.length),
        },
      },
      footnote: `Costs of the measured weeks over the parts that were finished in them, those made outside with them. Lines: ${intervalWords(results.run)}.`,
    },
  ];
}
