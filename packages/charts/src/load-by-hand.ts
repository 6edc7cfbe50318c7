import type { HandLoad, Results } from '@buildweek/results';
import type { Chart, ChartSize, Layer } from './chart.ts';
import { formatEstimate, formatShare, PERCENT, shorten } from './format.ts';
import { intervalWords } from './interval-words.ts';
import { INK, LINE, SECOND_LINE } from './palette.ts';
import { plotWidth, ROW, rowAxis, rowEnds, rowNames } from './row-axis.ts';
import { type SimulatedUse, simulatedUse } from './simulated-use.ts';
import { themeFor } from './theme.ts';

const HAND = 'by hand';
const SIMULATED = 'simulated, at work';
const HELD = 'simulated, held in all';
const WHICH = [HAND, SIMULATED, HELD];
const HAND_FILL = '#f5bd62';
const HELD_FILL = '#b1cfdf';
const STEP: Readonly<Record<ChartSize, number>> = { wide: 28, narrow: 40 };

interface LoadRow {
  readonly row: number;
  readonly hand: HandLoad;
  readonly use: SimulatedUse | null;
}

function marksOf(rows: readonly LoadRow[]) {
  return rows.flatMap(({ row, hand, use }) => [
    { row, which: HAND, value: hand.load },
    ...(use === null ? [] : [{ row, which: SIMULATED, value: use.working.value }]),
    ...(use === null || use.held === null ? [] : [{ row, which: HELD, value: use.held.value }]),
  ]);
}

function intervalsOf(rows: readonly LoadRow[]) {
  return rows.flatMap(({ row, use }) =>
    use === null
      ? []
      : [use.working, ...(use.held === null ? [] : [use.held])].map(({ low, high }) => ({ row, low, high })),
  );
}

function endWords({ hand, use }: LoadRow): string {
  return use === null
    ? formatShare(hand.load)
    : `${formatShare(hand.load)} · ${formatShare(use.working.value)}`;
}

function layers(rows: readonly LoadRow[], size: ChartSize): Layer[] {
  const wide = size === 'wide';
  return [
    {
      data: { values: [{ limit: 1 }] },
      mark: { type: 'rule', color: SECOND_LINE, strokeWidth: 2, strokeDash: [6, 3] },
      encoding: { x: { field: 'limit', type: 'quantitative' } },
    },
    {
      data: { values: intervalsOf(rows) },
      mark: { type: 'rule', color: LINE, strokeWidth: 5, opacity: 0.45 },
      encoding: { x: { field: 'low', type: 'quantitative' }, x2: { field: 'high' }, y: ROW },
    },
    {
      data: { values: marksOf(rows) },
      mark: { type: 'point', filled: true, size: 90, opacity: 1, stroke: INK, strokeWidth: 1.4 },
      encoding: {
        x: { field: 'value', type: 'quantitative' },
        y: ROW,
        shape: {
          field: 'which',
          type: 'nominal',
          scale: { domain: WHICH, range: ['diamond', 'circle', 'circle'] },
          legend: {
            title: null,
            orient: 'top',
            columns: wide ? 3 : 2,
          },
        },
        fill: {
          field: 'which',
          type: 'nominal',
          scale: { domain: WHICH, range: [HAND_FILL, LINE, HELD_FILL] },
          legend: {
            title: null,
            orient: 'top',
            columns: wide ? 3 : 2,
          },
        },
      },
    },
  ];
}

/** Load by hand calculation beside the use that the simulation found. */
export function loadByHand(results: Results, size: ChartSize): Chart {
  const rows = results.handCalculation.map((hand, row) => ({ row, hand, use: simulatedUse(results, hand) }));
  const [highest] = [...rows].sort((one, other) => other.hand.load - one.hand.load);
  const values = [...marksOf(rows).map((mark) => mark.value), ...intervalsOf(rows).map((one) => one.high)];
  const names = rows.map(({ hand }) => ({ name: hand.name }));
  const ends = { title: 'by hand · sim.', words: size === 'wide' ? rows.map(endWords) : [] };
  const width = plotWidth(names, ends, size);
  return {
    id: 'load-by-hand',
    title:
      highest === undefined
        ? 'Nothing is asked of this lab'
        : `By hand the highest load is ${formatShare(highest.hand.load)} (${shorten(highest.hand.name)})` +
          (highest.use === null ? '' : `; simulated ${formatEstimate(highest.use.working, PERCENT)} at work`),
    description: `Load by hand calculation and simulated use. ${rows
      .map(({ hand, use }) => {
        const simulated =
          use === null
            ? 'no simulated figure'
            : `simulated ${formatEstimate(use.working, PERCENT)} at work` +
              (use.held === null ? '' : `, ${formatShare(use.held.value)} held in all`);
        return `${hand.name}: ${formatShare(hand.load)} by hand, ${simulated}.`;
      })
      .join(' ')}`,
    spec: {
      config: themeFor(size),
      width,
      height: STEP[size] * rows.length,
      layer: [...layers(rows, size), ...rowNames(names, size, 8), ...rowEnds(ends, width, size)],
      encoding: {
        x: {
          type: 'quantitative',
          scale: { domain: [0, Math.max(1.08, ...values.map((value) => value * 1.04))], nice: false },
          axis: { title: 'share of the hours available', format: '.0%', tickCount: size === 'wide' ? 8 : 4 },
        },
        y: rowAxis(rows.length),
      },
    },
    footnote:
      'Dashed line: 100\u00a0%, where a queue grows without end. Held in all: also the time in which a machine or ' +
      'station waits for people, is maintained or is down. Bars behind the circles: ' +
      `${intervalWords(results.run)}.`,
  };
}
