import type { Timeline } from '@buildweek/results';
import type { ChartSize, Layer, LayeredSpec } from '../chart.ts';
import { INK, LINE, PAPER } from '../palette.ts';
import { textWidth } from '../text-width.ts';
import { FONT_SIZE } from '../theme.ts';
import { formatLength } from './spread-words.ts';
import {
  buildStages,
  kindOfStretch,
  STRETCH_KINDS,
  STRETCH_WORDS,
  type StretchKind,
  stretchName,
} from './stretch-words.ts';

/** Heights tell the kinds apart without any colour, CSS pixels. */
const HEIGHT: Readonly<Record<StretchKind, number>> = { hands: 24, 'by itself': 15, waits: 3 };
const COLOUR: Readonly<Record<StretchKind, string>> = {
  hands: LINE,
  'by itself': '#a3c6da',
  waits: '#d9722e',
};
const LABEL_COLOUR: Readonly<Record<StretchKind, string>> = { hands: PAPER, 'by itself': INK, waits: INK };
/** A label of a wait stands above its line. */
const LABEL_LIFT: Readonly<Record<StretchKind, number>> = { hands: 0, 'by itself': 0, waits: -8 };
const LABEL_MARGIN = 8;
const KEY_SAMPLE = 26;
const KEY_GAP = 18;
const KEY_LINE = 26;

const AT = (field: string) => ({ field, type: 'quantitative' }) as const;

interface Bar {
  readonly kind: StretchKind;
  readonly from: number;
  readonly to: number;
  readonly y: number;
  readonly middle: number;
  readonly label: string;
}

/** A kind's bars: those of hands and of machines with a thin edge, so that five minutes are seen too. */
function barLayer(kind: StretchKind, bars: readonly Bar[]): Layer {
  return {
    data: { values: bars.filter((bar) => bar.kind === kind) },
    mark: {
      type: 'bar',
      height: HEIGHT[kind],
      color: COLOUR[kind],
      ...(kind === 'waits' ? {} : { stroke: kind === 'hands' ? PAPER : LINE, strokeWidth: 0.5 }),
    },
    encoding: { x: AT('from'), x2: { field: 'to' }, y: AT('y') },
  };
}

/** The labels of a kind's bars; those of waits on a ground of paper, since lines of the axis pass there. */
function labelLayers(kind: StretchKind, bars: readonly Bar[], size: ChartSize): Layer[] {
  const labels = (look: { color: string; stroke?: string; strokeWidth?: number }): Layer => ({
    data: { values: bars.filter((bar) => bar.kind === kind && bar.label !== '') },
    mark: {
      type: 'text',
      baseline: 'middle',
      fontSize: FONT_SIZE[size] - 1.5,
      dy: LABEL_LIFT[kind],
      ...look,
    },
    encoding: { x: AT('middle'), y: AT('y'), text: { field: 'label' } },
  });
  const ground = labels({ color: PAPER, stroke: PAPER, strokeWidth: 4 });
  return [...(kind === 'waits' ? [ground] : []), labels({ color: LABEL_COLOUR[kind] })];
}

/**
 * The stretches of some timelines as bars, each with its name and length where there is room inside.
 *
 * @param rows timelines and the middle of the bar of each, CSS pixels
 * @param room width of the plot in CSS pixels, and the hours that it stands for
 */
export function stretchBars(
  rows: readonly { readonly timeline: Timeline; readonly bar: number }[],
  { size, width, hours }: { readonly size: ChartSize; readonly width: number; readonly hours: number },
): Layer[] {
  const bars = rows.flatMap(({ timeline, bar }) => {
    const builds = buildStages(timeline);
    return timeline.stretches.map((stretch): Bar => {
      const length = stretch.toHour - stretch.fromHour;
      const name = stretchName(stretch, builds.has(stretch.stage));
      const space = (length / hours) * width - LABEL_MARGIN;
      const label = [`${name} ${formatLength(length)}`, name].find(
        (words) => textWidth(words, FONT_SIZE[size] - 1.5) <= space,
      );
      return {
        kind: kindOfStretch(stretch),
        from: stretch.fromHour,
        to: stretch.toHour,
        y: bar,
        middle: (stretch.fromHour + stretch.toHour) / 2,
        label: label ?? '',
      };
    });
  });
  return [
    ...(['waits', 'by itself', 'hands'] as const).map((kind) => barLayer(kind, bars)),
    ...STRETCH_KINDS.flatMap((kind) => labelLayers(kind, bars, size)),
  ];
}

/** What the three kinds of bars mean, drawn as they are drawn in the rows. */
export function stretchKey(width: number, size: ChartSize): LayeredSpec {
  let x = 0;
  let line = 0;
  const entries = STRETCH_KINDS.map((kind) => {
    const words = STRETCH_WORDS[kind];
    const length = KEY_SAMPLE + 6 + textWidth(words, FONT_SIZE[size]);
    if (x > 0 && x + length > width) {
      x = 0;
      line++;
    }
    const entry = {
      kind,
      from: x,
      to: x + KEY_SAMPLE,
      text: x + KEY_SAMPLE + 6,
      y: line * KEY_LINE + 13,
      words,
    };
    x += length + KEY_GAP;
    return entry;
  });
  const height = (line + 1) * KEY_LINE;
  return {
    width,
    height,
    layer: [
      ...STRETCH_KINDS.map((kind) =>
        barLayer(
          kind,
          entries.filter((entry) => entry.kind === kind).map((entry) => ({ ...entry, middle: 0, label: '' })),
        ),
      ),
      {
        data: { values: entries },
        mark: { type: 'text', align: 'left', baseline: 'middle' },
        encoding: { x: AT('text'), y: AT('y'), text: { field: 'words' } },
      },
    ],
    encoding: {
      x: { type: 'quantitative', axis: null, scale: { domain: [0, width], nice: false } },
      y: {
        type: 'quantitative',
        axis: null,
        scale: { domain: [0, height], reverse: true, nice: false, zero: false },
      },
    },
  };
}
