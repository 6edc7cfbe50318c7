import type { Spread } from '@buildweek/results';
import { CHART_WIDTH, type ChartSize, type HorizontalAxis, type Layer, type LayeredSpec } from '../chart.ts';
import { aboveZero, type LogAxis, logAxis, logLabels, shareOf } from '../log-axis.ts';
import { INK, MUTED_INK } from '../palette.ts';
import { textWidth } from '../text-width.ts';
import { FONT_SIZE } from '../theme.ts';
import { spreadLabels } from './spread-labels.ts';
import { type DrawnWay, wayLabel } from './ways.ts';

const HEIGHT: Readonly<Record<ChartSize, number>> = { wide: 330, narrow: 300 };
/** Room to the left of the plot for axis and title, CSS pixels. */
export const AXIS_ROOM: Readonly<Record<ChartSize, number>> = { wide: 62, narrow: 56 };
const LABEL_GAP = 18;
/** Room for the mark of a way before its name. */
const MARK_ROOM = 13;
const MOST_LABEL = 190;
const LABEL_HEIGHT = 17;
/** Whiskers that would cover each other stand side by side, CSS pixels. */
const SIDE_STEP: Readonly<Record<ChartSize, number>> = { wide: 9, narrow: 8 };
const MARK_HEIGHT = 9;
const KEY_LINE = 20;
const KEY_SAMPLE = 34;

const AT = (field: string) => ({ field, type: 'quantitative' }) as const;

const MARK = { type: 'point', filled: true, stroke: INK, strokeWidth: 1, size: 62, opacity: 1 } as const;

/** A way, and what is drawn of it at each quantity. */
export interface QuantityCurve {
  readonly drawn: DrawnWay;
  /** Typical values. */
  readonly line: readonly { readonly quantity: number; readonly value: number }[];
  readonly spreads: readonly { readonly quantity: number; readonly spread: Spread }[];
}

/** The plot of some curves: its axes and its width in CSS pixels. */
export interface QuantityPlot {
  readonly size: ChartSize;
  readonly curves: readonly QuantityCurve[];
  readonly width: number;
  readonly x: LogAxis;
  readonly y: LogAxis;
}

function labelOf(curve: QuantityCurve, size: ChartSize): string {
  return size === 'narrow' ? curve.drawn.code : wayLabel(curve.drawn, MOST_LABEL, FONT_SIZE[size]);
}

/** Lays out axes and room for some curves; at least one must have a point. */
export function quantityPlot(curves: readonly QuantityCurve[], size: ChartSize): QuantityPlot {
  const quantities = curves.flatMap((curve) => [...curve.line, ...curve.spreads].map((one) => one.quantity));
  const values = curves.flatMap((curve) => [
    ...curve.line.map((one) => one.value),
    ...curve.spreads.flatMap(({ spread }) => [spread.typical, spread.low, spread.high]),
  ]);
  const labels = Math.max(...curves.map((curve) => textWidth(labelOf(curve, size), FONT_SIZE[size])));
  return {
    size,
    curves,
    width: Math.floor(CHART_WIDTH[size] - AXIS_ROOM[size] - LABEL_GAP - MARK_ROOM - labels - 8),
    x: logAxis(quantities),
    y: logAxis(values),
  };
}

/** Numbers of the axis of pieces that have room beside each other. */
function quantityTicks({ x, width, size }: QuantityPlot): number[] {
  let free = Number.NEGATIVE_INFINITY;
  return x.ticks
    .filter((tick) => Number.isInteger(tick))
    .filter((tick) => {
      const half = textWidth(String(tick), FONT_SIZE[size]) / 2 + 4;
      const at = shareOf(x, tick) * width;
      if (at - half < free) return false;
      free = at + half;
      return true;
    });
}

/** The scale of pieces, with an axis where a title is given. */
export function quantityScale(plot: QuantityPlot, title: string | null): HorizontalAxis {
  return {
    type: 'quantitative',
    scale: { type: 'log', domain: [...plot.x.domain], nice: false },
    axis:
      title === null
        ? null
        : { title, values: quantityTicks(plot), format: 'd', grid: false, labelOverlap: false },
  };
}

/** How far each whisker of a quantity stands aside: only those that would cover each other do. CSS pixels. */
function sideSteps(plot: QuantityPlot, quantity: number): Map<QuantityCurve, number> {
  const height = HEIGHT[plot.size];
  const at = (value: number): number => (1 - shareOf(plot.y, value)) * height;
  const spans = plot.curves
    .flatMap((curve) => {
      const spread = curve.spreads.find((one) => one.quantity === quantity)?.spread;
      if (spread === undefined) return [];
      const middle = at(spread.typical);
      return [
        {
          curve,
          from: Math.min(at(spread.high), middle - MARK_HEIGHT / 2),
          to: Math.max(at(spread.low), middle + MARK_HEIGHT / 2),
        },
      ];
    })
    .sort((one, other) => one.from - other.from);
  const groups: { members: QuantityCurve[]; to: number }[] = [];
  for (const span of spans) {
    const last = groups.at(-1);
    if (last !== undefined && span.from < last.to) {
      last.members.push(span.curve);
      last.to = Math.max(last.to, span.to);
    } else groups.push({ members: [span.curve], to: span.to });
  }
  return new Map(
    groups.flatMap(({ members }) =>
      members.map(
        (curve, index) => [curve, (index - (members.length - 1) / 2) * SIDE_STEP[plot.size]] as const,
      ),
    ),
  );
}

function lineLayer({ drawn, line }: QuantityCurve): Layer {
  return {
    data: { values: line.map(({ quantity, value }) => ({ quantity, value: aboveZero(value) })) },
    mark: { type: 'line', color: drawn.colour, strokeWidth: 2.2, strokeDash: [...drawn.dash] },
    encoding: { x: AT('quantity'), y: AT('value') },
  };
}

/** The spread of a way at one of the quantities that were played, with its mark. */
function spreadLayers(drawn: DrawnWay, quantity: number, spread: Spread, xOffset: number): Layer[] {
  const values = [
    {
      quantity,
      typical: aboveZero(spread.typical),
      low: aboveZero(spread.low),
      high: aboveZero(spread.high),
    },
  ];
  return [
    {
      data: { values },
      mark: { type: 'rule', color: INK, strokeWidth: 1.3, xOffset },
      encoding: { x: AT('quantity'), y: AT('low'), y2: { field: 'high' } },
    },
    {
      data: { values },
      mark: { ...MARK, shape: drawn.shape, color: drawn.colour, xOffset },
      encoding: { x: AT('quantity'), y: AT('typical') },
    },
  ];
}

/** A typical line of each way and, over all lines, the spreads. */
function curveLayers(plot: QuantityPlot): Layer[] {
  const quantities = [...new Set(plot.curves.flatMap((curve) => curve.spreads.map((one) => one.quantity)))];
  return [
    ...plot.curves.map(lineLayer),
    ...quantities.flatMap((quantity) => {
      const steps = sideSteps(plot, quantity);
      return plot.curves.flatMap((curve) =>
        curve.spreads
          .filter((one) => one.quantity === quantity)
          .flatMap(({ spread }) => spreadLayers(curve.drawn, quantity, spread, steps.get(curve) ?? 0)),
      );
    }),
  ];
}

/** The name of each way at the end of its line, with a thin line to it where it had to move. */
function nameLayers(plot: QuantityPlot): Layer[] {
  const height = HEIGHT[plot.size];
  const ends = plot.curves.map((curve) => {
    const last = curve.line.at(-1)?.value ?? curve.spreads.at(-1)?.spread.typical ?? plot.y.domain[0];
    return (1 - shareOf(plot.y, last)) * height;
  });
  const places = spreadLabels(ends, LABEL_HEIGHT, height);
  return plot.curves.flatMap((curve, index): Layer[] => [
    {
      data: { values: [{}] },
      mark: { type: 'rule', color: MUTED_INK, strokeWidth: 0.8 },
      encoding: {
        x: { value: plot.width + 2 },
        x2: { value: plot.width + LABEL_GAP - 3 },
        y: { value: ends[index] ?? 0 },
        y2: { value: places[index] ?? 0 },
      },
    },
    {
      data: { values: [{}] },
      mark: {
        ...MARK,
        shape: curve.drawn.shape,
        color: curve.drawn.colour,
        x: plot.width + LABEL_GAP + MARK_ROOM / 2 - 2,
        y: places[index] ?? 0,
      },
      encoding: {},
    },
    {
      data: { values: [{ words: labelOf(curve, plot.size) }] },
      mark: {
        type: 'text',
        align: 'left',
        baseline: 'middle',
        x: plot.width + LABEL_GAP + MARK_ROOM,
        y: places[index] ?? 0,
        fontWeight: plot.size === 'narrow' ? 'bold' : 'normal',
      },
      encoding: { text: { field: 'words' } },
    },
  ]);
}

/**
 * Curves over the number of pieces, both axes logarithmic.
 *
 * @param plot axes and room
 * @param title of the vertical axis
 * @param marked quantities at which a dotted line stands
 */
export function quantityCurves(plot: QuantityPlot, title: string, marked: readonly number[]): LayeredSpec {
  return {
    width: plot.width,
    height: HEIGHT[plot.size],
    layer: [
      {
        data: { values: marked.map((quantity) => ({ quantity })) },
        mark: { type: 'rule', color: INK, strokeWidth: 1, strokeDash: [2, 3] },
        encoding: { x: AT('quantity') },
      },
      ...curveLayers(plot),
      ...nameLayers(plot),
    ],
    encoding: {
      x: quantityScale(plot, 'pieces in the job, each step of the scale a factor'),
      y: {
        type: 'quantitative',
        scale: { type: 'log', domain: [...plot.y.domain], nice: false },
        axis: {
          title,
          values: [...plot.y.ticks],
          labelExpr: logLabels(plot.y),
          labelOverlap: false,
        },
      },
    },
  };
}

/** What the lines mean, for a narrow chart, on which only their letters stand at their ends. */
export function curveKey(plot: QuantityPlot): LayeredSpec {
  const width = CHART_WIDTH[plot.size] - AXIS_ROOM[plot.size];
  const height = KEY_LINE * plot.curves.length;
  const y = (index: number): number => index * KEY_LINE + KEY_LINE / 2;
  return {
    width,
    height,
    layer: plot.curves.flatMap(({ drawn }, index): Layer[] => [
      {
        data: { values: [{}] },
        mark: { type: 'rule', color: drawn.colour, strokeWidth: 2.2, strokeDash: [...drawn.dash] },
        encoding: {
          x: { value: 0 },
          x2: { value: KEY_SAMPLE },
          y: { value: y(index) },
          y2: { value: y(index) },
        },
      },
      {
        data: { values: [{}] },
        mark: { ...MARK, shape: drawn.shape, color: drawn.colour, x: KEY_SAMPLE / 2, y: y(index) },
        encoding: {},
      },
      {
        data: { values: [{ words: wayLabel(drawn, width - KEY_SAMPLE - 8, FONT_SIZE[plot.size]) }] },
        mark: { type: 'text', align: 'left', baseline: 'middle', x: KEY_SAMPLE + 8, y: y(index) },
        encoding: { text: { field: 'words' } },
      },
    ]),
  };
}
