import type { LearnedDuration } from '@buildweek/results';
import { CHART_WIDTH, type Chart, type ChartSize, type Layer, type LayeredSpec } from '../chart.ts';
import { formatPlain, shorten } from '../format.ts';
import { INK, LINE, MUTED_INK, SECOND_LINE } from '../palette.ts';
import { type Place, placeOf } from '../small-multiples.ts';
import { themeFor } from '../theme.ts';

const COLUMNS: Readonly<Record<ChartSize, number>> = { wide: 3, narrow: 1 };
const SHARE = { field: 'share', type: 'quantitative' } as const;
const TIME = { field: 'time', type: 'quantitative' } as const;
const DASHES = [
  [1, 0],
  [6, 4],
  [2, 3],
  [8, 3, 2, 3],
];
const COLOURS = [LINE, SECOND_LINE, MUTED_INK, INK];

/** Shares of measured times that are at most so long, with the fitted laws through them. */
export function fittedDurations(durations: readonly LearnedDuration[], size: ChartSize): Chart {
  const curves = durations
    .filter(({ families }) => families.length > 0)
    .map((one) => ({
      ...one,
      families: one.families
        .filter(({ isAboutAsGood }) => isAboutAsGood)
        .map((family) => ({ ...family, name: familyName(family.name) })),
    }));
  const columns = Math.min(COLUMNS[size], Math.max(1, curves.length));
  const families = [...new Set(curves.flatMap((curve) => curve.families.map(({ name }) => name)))];
  const [first] = curves;
  const best = first?.families[0]?.name;
  return {
    id: 'fitted-durations',
    title:
      first === undefined || best === undefined
        ? 'No time of work is fitted'
        : `${shorten(nameOf(first), 50)}: ${best} fits best${
            first.families.length > 1
              ? `, ${first.families
                  .slice(1)
                  .map(({ name }) => name)
                  .join(' and ')} about as well`
              : ''
          }`,
    description: curves
      .map(
        (curve) =>
          `${nameOf(curve)}: ${curve.seen} measured, half of them up to ${formatPlain(timeAt(curve.quantiles, 0.5))} ${curve.unit}, nine of ten up to ${formatPlain(timeAt(curve.quantiles, 0.9))} ${curve.unit}; ${curve.families.map((family) => `${family.name} says ${formatPlain(timeAt(family.curve, 0.5))} and ${formatPlain(timeAt(family.curve, 0.9))} ${curve.unit}`).join('; ')}.`,
      )
      .join(' '),
    spec: {
      config: themeFor(size),
      columns,
      concat: curves.map((curve, index) =>
        panel(curve, families, size, placeOf(index, curves.length, columns), columns, index === 0),
      ),
      resolve: { scale: { color: 'shared', strokeDash: 'shared' } },
    },
    footnote:
      'Points: share of the measured times that are at most so long. Lines: the laws that fit about equally; a scenario can be played with each.',
  };
}

function panel(
  curve: LearnedDuration,
  families: readonly string[],
  size: ChartSize,
  place: Place,
  columns: number,
  hasLegend: boolean,
): LayeredSpec {
  const width = Math.floor(CHART_WIDTH[size] / columns) - (size === 'wide' ? 66 : 56);
  return {
    title: shorten(nameOf(curve), Math.floor(width / 7)),
    width,
    height: size === 'wide' ? 130 : 120,
    layer: [...curve.families.map((family) => line(family, families, hasLegend)), points(curve)],
    encoding: {
      x: {
        type: 'quantitative',
        axis: { title: `${curve.unit} per ${curve.per}`, tickCount: 4, grid: false },
        scale: { zero: true },
      },
      y: {
        type: 'quantitative',
        axis: { title: place.left ? 'share at most so long' : null, format: '.0%', tickCount: 3 },
        scale: { domain: [0, 1] },
      },
    },
  };
}

function line(
  { name, curve }: LearnedDuration['families'][number],
  families: readonly string[],
  hasLegend: boolean,
): Layer {
  const domain = [...families];
  const legend = hasLegend
    ? { title: null, orient: 'top' as const, symbolType: 'stroke', symbolStrokeWidth: 2 }
    : null;
  return {
    data: { values: [...curve] },
    mark: { type: 'line', strokeWidth: 1.6 },
    encoding: {
      x: TIME,
      y: SHARE,
      order: SHARE,
      color: {
        datum: name,
        type: 'nominal',
        scale: { domain, range: COLOURS.slice(0, domain.length) },
        legend,
      },
      strokeDash: {
        datum: name,
        type: 'nominal',
        scale: { domain, range: DASHES.slice(0, domain.length) },
        legend,
      },
    },
  };
}

function points({ quantiles }: LearnedDuration): Layer {
  return {
    data: { values: [...quantiles] },
    mark: { type: 'point', filled: true, color: INK, opacity: 1, size: 18 },
    encoding: { x: TIME, y: SHARE },
  };
}

/** As it is written in a sentence: one family is named after a person. */
export function familyName(name: string): string {
  return name === 'weibull' ? 'Weibull' : name;
}

function nameOf({ of, stage }: LearnedDuration): string {
  return `${of}, ${stage}`;
}

/** The time that a share of a curve stays below. */
function timeAt(curve: readonly { readonly share: number; readonly time: number }[], share: number): number {
  return curve.find((point) => point.share >= share)?.time ?? curve.at(-1)?.time ?? 0;
}
