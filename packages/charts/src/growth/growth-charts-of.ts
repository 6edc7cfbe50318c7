import type { GrowthAnswer, GrowthMonth, GrowthPurchase, TargetVerdict } from '@buildweek/results';
import type { BandRow } from '../band-layers.ts';
import { CHART_WIDTH, type Chart, type ChartSize, type HorizontalAxis, type Layer } from '../chart.ts';
import { formatEstimate, formatLevel, formatShare, PERCENT, shorten } from '../format.ts';
import { BAND, INK, LINE, PAPER, SECOND_BAND, SECOND_LINE } from '../palette.ts';
import { themeFor } from '../theme.ts';

const VERDICTS: readonly TargetVerdict[] = ['met', 'not decided', 'missed'];
const MOST_TICKS: Readonly<Record<ChartSize, number>> = { wide: 13, narrow: 4 };
const NOTHING = 'nothing is bought';

interface MonthRow extends BandRow {
  readonly verdict: TargetVerdict;
}

function rowsOf(months: readonly GrowthMonth[], target: number): MonthRow[] {
  return months.flatMap(({ month, targets }): MonthRow[] => {
    const found = targets[target];
    if (found?.share.kind !== 'estimate') return [];
    const { value, low, high } = found.share;
    return [{ x: month, value, low: Math.max(0, low), high: Math.min(1, high), verdict: found.verdict }];
  });
}

const X = { field: 'x', type: 'quantitative' } as const;

function curve(rows: readonly MonthRow[], name: string, names: readonly string[], isFirst: boolean): Layer[] {
  const series = {
    datum: name,
    type: 'nominal' as const,
    scale: { domain: [...names], range: [LINE, SECOND_LINE] },
    legend:
      names.length === 1 || !isFirst
        ? null
        : { title: null, orient: 'top' as const, symbolType: 'stroke', symbolStrokeWidth: 2 },
  };
  return [
    {
      data: { values: [...rows] },
      mark: { type: 'area', color: isFirst ? BAND : SECOND_BAND, opacity: 0.7 },
      encoding: { x: X, y: { field: 'low', type: 'quantitative' }, y2: { field: 'high' } },
    },
    {
      data: { values: [...rows] },
      mark: { type: 'line', strokeWidth: 1.8, ...(isFirst ? {} : { strokeDash: [6, 4] }) },
      encoding: { x: X, y: { field: 'value', type: 'quantitative' }, color: series },
    },
  ];
}

function verdictMarks(rows: readonly MonthRow[]): Layer {
  const legend = { title: null, orient: 'bottom' as const, direction: 'horizontal' as const };
  return {
    data: { values: [...rows] },
    mark: { type: 'point', filled: true, opacity: 1, size: 62, stroke: INK, strokeWidth: 1.1 },
    encoding: {
      x: X,
      y: { field: 'value', type: 'quantitative' },
      fill: {
        field: 'verdict',
        type: 'nominal',
        scale: { domain: [...VERDICTS], range: [LINE, PAPER, SECOND_LINE] },
        legend,
      },
      shape: {
        field: 'verdict',
        type: 'nominal',
        scale: { domain: [...VERDICTS], range: ['circle', 'square', 'diamond'] },
        legend,
      },
    },
  };
}

interface Spot {
  readonly isLeft: boolean;
  readonly isAbove: boolean;
}

/** Where words at the line of a share have most room: at which end, on which side of it. */
function emptiestSpot(share: number, curves: readonly (readonly MonthRow[])[]): Spot {
  const room = ({ isLeft, isAbove }: Spot): number =>
    Math.min(
      1,
      ...curves.flatMap((rows) => {
        const value = (isLeft ? rows[0] : rows.at(-1))?.value;
        return value === undefined || value > share !== isAbove ? [] : [Math.abs(value - share)];
      }),
    );
  const spots = [false, true].flatMap((isLeft) => [true, false].map((isAbove) => ({ isLeft, isAbove })));
  return spots.reduce((best, spot) => (room(spot) > room(best) ? spot : best));
}

function asked(share: number, width: number, { isLeft, isAbove }: Spot): Layer[] {
  return [
    {
      data: { values: [{ share }] },
      mark: { type: 'rule', color: INK, strokeWidth: 1.2, strokeDash: [3, 3] },
      encoding: { y: { field: 'share', type: 'quantitative' } },
    },
    {
      data: { values: [{ share, words: `asked for: ${formatShare(share)}` }] },
      mark: {
        type: 'text',
        align: isLeft ? 'left' : 'right',
        baseline: isAbove ? 'bottom' : 'top',
        x: isLeft ? 6 : width - 4,
        dy: isAbove ? -3 : 4,
        color: INK,
      },
      encoding: { y: { field: 'share', type: 'quantitative' }, text: { field: 'words' } },
    },
  ];
}

/** Months with their label; the expression holds nothing from a scenario but numbers. */
function monthAxis(months: readonly GrowthMonth[], size: ChartSize): HorizontalAxis {
  const last = Math.max(1, ...months.map(({ month }) => month));
  const step = Math.max(1, Math.ceil(last / (MOST_TICKS[size] - 1)));
  const labels = Array.from({ length: last + 1 }, (_, month) => {
    const label = months.find((one) => one.month === month)?.label ?? '';
    return `'${label}'`;
  });
  return {
    type: 'quantitative',
    axis: {
      title: 'month',
      values: Array.from({ length: Math.floor(last / step) + 1 }, (_, index) => index * step),
      labelExpr: `[${labels.join(',')}][datum.value]`,
      grid: false,
    },
    scale: { domain: [0, Math.max(1, last)], nice: false },
  };
}

/** The share that one target is about, month by month, when nothing is bought and with what restores it. */
function targetChart(answer: GrowthAnswer, target: number, size: ChartSize): Chart | null {
  const told = answer.targets[target];
  const rows = rowsOf(answer.months, target);
  if (told === undefined || rows.length === 0) return null;
  const bought = boughtMonths(answer);
  const boughtRows = rowsOf(bought, target);
  const [best] = answer.purchases;
  const names =
    best === undefined || boughtRows.length === 0
      ? [NOTHING]
      : [
          NOTHING,
          answer.purchases.length === 1 ? withWords(best) : 'with all purchases, one after the other',
        ];
  const width = CHART_WIDTH[size] - (size === 'wide' ? 90 : 70);
  const all = [...rows, ...boughtRows];
  const least = Math.min(told.asked, ...all.map(({ low }) => low));
  const most = Math.max(told.asked, ...all.map(({ high }) => high));
  const margin = Math.max(0.02, 0.08 * (most - least));
  const missed = told.firstMissed === null ? null : answer.months[told.firstMissed];
  return {
    id: `growth-${target + 1}`,
    title:
      missed === null || missed === undefined
        ? `“${shorten(told.wording, 70)}” is missed in no month for certain`
        : `“${shorten(told.wording, 70)}” is missed from ${missed.label} on`,
    description: answer.months
      .flatMap(({ label, targets }) => {
        const found = targets[target];
        return found?.share.kind === 'estimate'
          ? [`${label}: ${formatEstimate(found.share, PERCENT)}, ${found.verdict}.`]
          : [];
      })
      .join(' '),
    spec: {
      config: themeFor(size),
      width,
      height: size === 'wide' ? 260 : 220,
      layer: [
        ...curve(rows, NOTHING, names, true),
        ...(boughtRows.length === 0 ? [] : curve(boughtRows, names[1] ?? '', names, false)),
        ...asked(told.asked, width, emptiestSpot(told.asked, [rows, boughtRows])),
        verdictMarks(all),
      ],
      resolve: { legend: { color: 'independent', fill: 'independent', shape: 'independent' } },
      encoding: {
        x: monthAxis([...answer.months, ...bought], size),
        y: {
          type: 'quantitative',
          axis: { title: 'share in the long run', format: '.0%', tickCount: 5 },
          scale: {
            domain: [Math.max(0, least - margin), Math.min(1, most + margin)],
            nice: false,
            zero: false,
          },
        },
      },
    },
    footnote: `Every month is played as if its demand had come to stay. Shaded: ${formatLevel(answer.run.level)} confidence intervals from ${answer.run.replications} replications. A target counts as met or missed from a one-sided confidence of ${formatLevel(answer.run.level)} on.`,
  };
}

/** Months with what was bought until then: each purchase up to the month in which the next one works. */
function boughtMonths({ purchases }: GrowthAnswer): GrowthMonth[] {
  return purchases.flatMap(({ months }, index) => {
    const end = purchases[index + 1]?.month ?? Number.POSITIVE_INFINITY;
    return months.filter(({ month }) => month < end);
  });
}

function withWords({ name }: GrowthPurchase): string {
  return `with ${shorten(name, 40)}`;
}

/** The charts of an answer to growth: one for each target. */
export function growthChartsOf(answer: GrowthAnswer, size: ChartSize = 'wide'): Chart[] {
  return answer.targets.flatMap((_, target) => targetChart(answer, target, size) ?? []);
}
