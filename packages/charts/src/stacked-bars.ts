import { CHART_WIDTH, type ChartSize, type Layer, type LayeredSpec } from './chart.ts';
import { GRID, INK, MUTED_INK, PAPER, type ProcessName, type StackPart, textColourOn } from './palette.ts';
import { nameRoom, plotWidth, ROW, rowAxis, rowEnds, rowNames, rowProcesses } from './row-axis.ts';
import { textWidth } from './text-width.ts';
import { FONT_SIZE } from './theme.ts';

/** One piece of a stacked bar. */
export interface Segment {
  readonly part: StackPart;
  readonly value: number;
  /** The value in words, for the label in the bar. */
  readonly words: string;
}

/** A stacked bar, and the whisker that says how certain the boundary is at which it stands. */
export interface StackedBar {
  readonly name: string;
  /** Behind the name, never cut. */
  readonly suffix: string;
  readonly segments: readonly Segment[];
  readonly whisker: { readonly low: number; readonly high: number } | null;
  readonly process: ProcessName | null;
  /** Behind the bar. */
  readonly endWords: string;
}

export interface StackedBars {
  readonly bars: readonly StackedBar[];
  readonly size: ChartSize;
  readonly axisTitle: string;
  /** End of the horizontal axis. */
  readonly top: number;
  /** Whether the values are shares of 1. */
  readonly shares: boolean;
  /** What stands over `endWords`. */
  readonly endTitle: string;
}

const BAR_HEIGHT: Readonly<Record<ChartSize, number>> = { wide: 24, narrow: 20 };
const STEP: Readonly<Record<ChartSize, number>> = { wide: 36, narrow: 48 };

/** Symbol of a legend entry and the gap behind the entry, CSS pixels. */
const SYMBOL_ROOM = 34;

/** Room between legend and bars; on a narrow chart the first name stands in it. CSS pixels. */
const LEGEND_OFFSET: Readonly<Record<ChartSize, number>> = { wide: 10, narrow: 24 };
const END_TITLE_HEIGHT = 12;

const FIRST_LETTER = 'A'.charCodeAt(0);

interface PieceRow {
  readonly row: number;
  readonly part: string;
  readonly start: number;
  readonly end: number;
  readonly value: number;
  readonly middle: number;
  readonly label: string;
  readonly labelColour: string;
}

/** The longest of the words that fit a segment: name and value, letter and value, the letter, nothing. */
function fittingLabel(segment: Segment, width: number, fontSize: number): string {
  const { code, label, short } = segment.part;
  const candidates = [
    `${label} ${segment.words}`,
    `${short} ${segment.words}`,
    `${code} ${segment.words}`,
    code,
  ];
  return candidates.find((text) => textWidth(text, fontSize) + 8 <= width) ?? '';
}

function piecesOf(stack: StackedBars, plotWidth: number): PieceRow[] {
  const fontSize = FONT_SIZE[stack.size] - 1;
  return stack.bars.flatMap((bar, row) => {
    let start = 0;
    return bar.segments
      .filter((segment) => segment.value > 0)
      .map((segment) => {
        const from = start;
        start += segment.value;
        return {
          row,
          part: legendLabel(segment.part),
          start: from,
          end: start,
          value: segment.value,
          middle: (from + start) / 2,
          label: fittingLabel(segment, (segment.value / stack.top) * plotWidth, fontSize),
          labelColour: textColourOn(segment.part.colour),
        };
      });
  });
}

function legendLabel(part: StackPart): string {
  return `${part.code}  ${part.label}`;
}

/** The parts that occur, in the order in which they are stacked. */
function partsOf(stack: StackedBars): StackPart[] {
  const seen = new Map<string, StackPart>();
  for (const bar of stack.bars) {
    for (const segment of bar.segments) if (segment.value > 0) seen.set(segment.part.code, segment.part);
  }
  return [...seen.values()].sort((one, other) => (one.code < other.code ? -1 : 1));
}

/** As many columns as fit above the chart; entries run from left to right, each column as wide as it must be. */
function legendColumns(parts: readonly StackPart[], size: ChartSize, room: number): number {
  const widths = parts.map((part) => textWidth(legendLabel(part), FONT_SIZE[size]) + SYMBOL_ROOM);
  for (let columns = parts.length; columns > 1; columns--) {
    let total = 0;
    for (let column = 0; column < columns; column++) {
      total += Math.max(...widths.filter((_, index) => index % columns === column));
    }
    if (total <= room) return columns;
  }
  return 1;
}

/** Whiskers stand just below their bar, so that no piece and no label is covered. */
function whiskerLayers(stack: StackedBars): Layer[] {
  const rows = stack.bars.flatMap((bar, row) => (bar.whisker === null ? [] : [{ row, ...bar.whisker }]));
  const yOffset = BAR_HEIGHT[stack.size] / 2 + 4;
  return [
    {
      data: { values: rows },
      mark: { type: 'rule', color: INK, strokeWidth: 2, yOffset },
      encoding: { x: { field: 'low', type: 'quantitative' }, x2: { field: 'high' }, y: ROW },
    },
    ...(['low', 'high'] as const).map(
      (field): Layer => ({
        data: { values: rows },
        mark: { type: 'tick', orient: 'vertical', color: INK, thickness: 1.5, size: 7, yOffset },
        encoding: { x: { field, type: 'quantitative' }, y: ROW },
      }),
    ),
  ];
}

/**
 * The same bars with new code letters: those of the parts that occur follow each other from A on, so that no letter of
 * the legend is missing.
 */
function lettered(stack: StackedBars): StackedBars {
  const codes = new Map(
    partsOf(stack).map((part, index) => [part.code, String.fromCharCode(FIRST_LETTER + index)]),
  );
  return {
    ...stack,
    bars: stack.bars.map((bar) => ({
      ...bar,
      segments: bar.segments
        .filter((segment) => codes.has(segment.part.code))
        .map((segment) => ({
          ...segment,
          part: { ...segment.part, code: codes.get(segment.part.code) ?? '' },
        })),
    })),
  };
}

/** Stacked horizontal bars with their legend, labels in the pieces and whiskers at the boundaries. */
export function stackedBars(asked: StackedBars): LayeredSpec {
  const stack = lettered(asked);
  const parts = partsOf(stack);
  const wide = stack.size === 'wide';
  const names = stack.bars.map((bar) => ({ name: bar.name, suffix: bar.suffix }));
  const ends = { title: stack.endTitle, words: stack.bars.map((bar) => bar.endWords) };
  const width = plotWidth(names, ends, stack.size);
  const pieces = piecesOf(stack, width);
  return {
    width,
    height: STEP[stack.size] * stack.bars.length,
    layer: [
      {
        data: { values: pieces },
        mark: { type: 'bar', height: BAR_HEIGHT[stack.size], stroke: PAPER, strokeWidth: 1.5 },
        encoding: {
          x: {
            field: 'start',
            type: 'quantitative',
            scale: { domain: [0, stack.top], nice: false },
            axis: {
              title: stack.axisTitle,
              ...(stack.shares ? { format: '.0%' } : {}),
              tickCount: wide ? 8 : 4,
              gridColor: GRID,
              domain: false,
              ticks: false,
            },
          },
          x2: { field: 'end' },
          y: ROW,
          color: {
            field: 'part',
            type: 'nominal',
            scale: { domain: parts.map(legendLabel), range: parts.map((part) => part.colour) },
            legend: {
              title: null,
              orient: 'top',
              columns: legendColumns(
                parts,
                stack.size,
                CHART_WIDTH[stack.size] - nameRoom(names, stack.size),
              ),
              columnPadding: SYMBOL_ROOM - 18,
              symbolType: 'square',
              symbolStrokeColor: MUTED_INK,
              offset: LEGEND_OFFSET[stack.size] + (stack.endTitle === '' ? 0 : END_TITLE_HEIGHT),
            },
          },
        },
      },
      {
        data: { values: pieces.filter((piece) => piece.label !== '') },
        mark: { type: 'text', baseline: 'middle', fontSize: FONT_SIZE[stack.size] - 1 },
        encoding: {
          x: { field: 'middle', type: 'quantitative' },
          y: ROW,
          text: { field: 'label' },
          color: { field: 'labelColour', type: 'nominal', scale: null },
        },
      },
      ...rowNames(names, stack.size, BAR_HEIGHT.narrow / 2 + 3),
      ...whiskerLayers(stack),
      ...rowProcesses(stack.bars.map((bar) => bar.process)),
      ...rowEnds(ends, width, stack.size),
    ],
    encoding: { y: rowAxis(stack.bars.length) },
    resolve: { scale: { color: 'independent' } },
  };
}
