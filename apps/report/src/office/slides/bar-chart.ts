import { INK, MUTED_INK } from '@buildweek/charts';
import { plainText } from '../plain-text.ts';
import { colour, type Deck, TYPEFACE } from './deck.ts';
import type { ErrorBars } from './error-bars.ts';
import type { Place } from './slide-chart.ts';
import type { Slide } from './slide-writer.ts';

/** Bars of one colour, one for each label. */
export interface Series {
  readonly name: string;
  readonly colour: string;
  readonly values: readonly number[];
  readonly intervals?: ErrorBars;
}

/** A chart of horizontal bars. */
export interface BarChart {
  readonly labels: readonly string[];
  readonly series: readonly Series[];
  readonly axisTitle: string;
  readonly grouping: 'clustered' | 'stacked';
  readonly alternative: string;
  readonly percent: boolean;
  /** End of the axis, where ends of intervals lie beyond what a program would choose by itself. */
  readonly top?: number;
}

/** A round number a little above the ends of all intervals. */
export function topOf(series: readonly Series[]): number {
  const ends = series.flatMap(({ values, intervals }) =>
    values.map((value, at) => value + (intervals?.plus[at] ?? 0)),
  );
  const most = Math.max(...ends) * 1.03;
  if (!(most > 0)) return 1;
  const step = 10 ** Math.floor(Math.log10(most)) / 2;
  return Number((Math.ceil(most / step) * step).toPrecision(6));
}

/** Puts a chart on a slide that the reader's program can edit. */
export function addBars(deck: Deck, slide: Slide, chart: BarChart, place: Place): void {
  // Programs draw the first bar at the foot, beside the axis.
  const labels = chart.labels.map(plainText).reverse();
  slide.addChart(
    'bar',
    chart.series.map(({ name, values }) => ({
      name: plainText(name),
      labels: [...labels],
      values: [...values].reverse(),
    })),
    {
      ...place,
      barDir: 'bar',
      barGrouping: chart.grouping,
      barGapWidthPct: 45,
      chartColors: chart.series.map((one) => colour(one.colour)),
      catAxisLabelFontFace: TYPEFACE,
      catAxisLabelFontSize: 11,
      catAxisLabelColor: colour(INK),
      valAxisLabelFontFace: TYPEFACE,
      valAxisLabelFontSize: 11,
      valAxisLabelColor: colour(MUTED_INK),
      valAxisMinVal: 0,
      ...(chart.top === undefined ? {} : { valAxisMaxVal: chart.top }),
      ...(chart.percent ? { valAxisMaxVal: 1, valAxisMajorUnit: 0.25, valAxisLabelFormatCode: '0%' } : {}),
      showValAxisTitle: true,
      valAxisTitle: chart.axisTitle,
      valAxisTitleFontFace: TYPEFACE,
      valAxisTitleFontSize: 11,
      valAxisTitleColor: colour(MUTED_INK),
      valGridLine: { color: 'DEDBD3', size: 0.75 },
      catGridLine: { style: 'none' },
      chartArea: { roundedCorners: false },
      showLegend: true,
      legendPos: 't',
      legendFontFace: TYPEFACE,
      legendFontSize: 11,
      legendColor: colour(INK),
      altText: plainText(chart.alternative),
    },
  );
  deck.intervals.push(
    chart.series.some(({ intervals }) => intervals !== undefined)
      ? chart.series.map(({ intervals, values }) => ({
          plus: [...(intervals?.plus ?? values.map(() => 0))].reverse(),
          minus: [...(intervals?.minus ?? values.map(() => 0))].reverse(),
        }))
      : null,
  );
}
