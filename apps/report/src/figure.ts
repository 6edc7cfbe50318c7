import {
  awayChartsOf,
  CHART_WIDTH,
  type Chart,
  chartsOf,
  comparisonChartsOf,
  doubtsChartsOf,
  growthChartsOf,
  learnedChartsOf,
  partChartsOf,
  planChartsOf,
  promiseChartsOf,
  replayChartsOf,
  staffChartsOf,
} from '@buildweek/charts';
import type {
  AwayAnswer,
  ComparisonAnswer,
  DoubtsAnswer,
  GrowthAnswer,
  LearnedAnswer,
  PartAnswer,
  PlanAnswer,
  PromiseAnswer,
  ReplayAnswer,
  Results,
  StaffAnswer,
} from '@buildweek/results';
import { chartImage } from './chart-image.ts';
import { Html, html } from './html.ts';

/** A chart in both of its widths; the style sheet shows the one that fits. */
export interface DrawnChart {
  readonly wide: Chart;
  readonly narrow: Chart;
}

/** Charts by their id, each in both of its widths. */
export function byId(wide: readonly Chart[], narrow: readonly Chart[]): ReadonlyMap<string, DrawnChart> {
  const narrowById = new Map(narrow.map((chart) => [chart.id, chart]));
  return new Map(wide.map((chart) => [chart.id, { wide: chart, narrow: narrowById.get(chart.id) ?? chart }]));
}

/** All charts of the results by their id. */
export function drawnCharts(results: Results): ReadonlyMap<string, DrawnChart> {
  return byId(chartsOf(results, 'wide'), chartsOf(results, 'narrow'));
}

/** All charts of the answer for one part by their id. */
export function drawnPartCharts(answer: PartAnswer): ReadonlyMap<string, DrawnChart> {
  return byId(partChartsOf(answer, 'wide'), partChartsOf(answer, 'narrow'));
}

/** All charts of a comparison of plans by their id. */
export function drawnComparisonCharts(answer: ComparisonAnswer): ReadonlyMap<string, DrawnChart> {
  return byId(comparisonChartsOf(answer, 'wide'), comparisonChartsOf(answer, 'narrow'));
}

/** All charts of a search for a plan by their id. */
export function drawnPlanCharts(answer: PlanAnswer): ReadonlyMap<string, DrawnChart> {
  return byId(planChartsOf(answer, 'wide'), planChartsOf(answer, 'narrow'));
}

/** All charts of an answer to doubts by their id. */
export function drawnDoubtsCharts(answer: DoubtsAnswer): ReadonlyMap<string, DrawnChart> {
  return byId(doubtsChartsOf(answer, 'wide'), doubtsChartsOf(answer, 'narrow'));
}

/** All charts of an answer to growth by their id. */
export function drawnGrowthCharts(answer: GrowthAnswer): ReadonlyMap<string, DrawnChart> {
  return byId(growthChartsOf(answer, 'wide'), growthChartsOf(answer, 'narrow'));
}

/** All charts of what was learned from a log by their id. */
export function drawnLearnedCharts(answer: LearnedAnswer): ReadonlyMap<string, DrawnChart> {
  return byId(learnedChartsOf(answer, 'wide'), learnedChartsOf(answer, 'narrow'));
}

/** All charts of an absence by their id. */
export function drawnAwayCharts(answer: AwayAnswer): ReadonlyMap<string, DrawnChart> {
  return byId(awayChartsOf(answer, 'wide'), awayChartsOf(answer, 'narrow'));
}

/** All charts of promised dates by their id. */
export function drawnPromiseCharts(answer: PromiseAnswer): ReadonlyMap<string, DrawnChart> {
  return byId(promiseChartsOf(answer, 'wide'), promiseChartsOf(answer, 'narrow'));
}

/** All charts of an answer to whom to have when by their id. */
export function drawnStaffCharts(answer: StaffAnswer): ReadonlyMap<string, DrawnChart> {
  return byId(staffChartsOf(answer, 'wide'), staffChartsOf(answer, 'narrow'));
}

/** All charts of a model held against what happened by their id. */
export function drawnReplayCharts(answer: ReplayAnswer): ReadonlyMap<string, DrawnChart> {
  return byId(replayChartsOf(answer, 'wide'), replayChartsOf(answer, 'narrow'));
}

/**
 * A drawing with its text alternative, which stands elsewhere under the id of the chart.
 * @param shown class that says on which screens it is seen
 */
export function picture(chart: Chart, kind: 'wide' | 'narrow', shown: string = kind): Html {
  const image = new Html(chartImage(chart.spec, CHART_WIDTH[kind]).svg);
  return html`<div class="picture ${shown}" role="img" aria-labelledby="${chart.id}" aria-describedby="${chart.id}-words">${image}</div>`;
}

/**
 * The figure of a chart: its title, the drawing, how to read it, and the same in words. Nothing when there is
 * no such chart.
 *
 * @param isFolded how to read it opens on request, where little room is left
 */
export function figure(charts: ReadonlyMap<string, DrawnChart>, id: string, isFolded = false): Html {
  const chart = charts.get(id);
  if (chart === undefined) return html``;
  const { title, footnote, description } = chart.wide;
  const words = html`<p id="${id}-words">${description}</p>`;
  return html`
<figure>
<figcaption id="${id}">${title}</figcaption>
${picture(chart.wide, 'wide')}${picture(chart.narrow, 'narrow')}
<div class="note">
${
  isFolded
    ? html`<details><summary>How to read this, and the same in words</summary><p>${footnote}</p>${words}</details>`
    : html`<p>${footnote}</p>
<details><summary>The same in words</summary>${words}</details>`
}
</div>
</figure>`;
}
