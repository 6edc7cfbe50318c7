import { DAYS, formatInterval, formatNumber, formatValue, type Unit } from '@buildweek/charts';
import type {
  EstimateOrRefused,
  JobClass,
  Never,
  Percentile,
  PredictionOrRefused,
  Refused,
  Run,
} from '@buildweek/results';
import { type Content, type Html, html } from './html.ts';

const QUARTER_WEEKS = 13;

/** The measured period as people speak of it. */
export function onePeriod(run: Run): string {
  if (run.weeks === QUARTER_WEEKS) return 'one quarter';
  return run.weeks === 1 ? 'one week' : `one period of ${run.weeks} weeks`;
}

/** "95 %". */
export function levelWords(level: number): string {
  return `${formatNumber(level * 100, 0)}\u00a0%`;
}

const bare = (unit: Unit): Unit => ({ ...unit, one: '', many: '' });

function missing(value: Refused | Never): Html {
  return value.kind === 'never'
    ? html`<span class="none">later than the end of the plan</span>`
    : html`<span class="none">not given: ${value.reason}</span>`;
}

/**
 * A cell with an estimate and its interval, or with the reason why there is none.
 *
 * @param estimate the number
 * @param unit of the column
 * @param spoken whether the unit is written in the cell; else it stands in the heading
 */
export function estimateCell(estimate: EstimateOrRefused, unit: Unit, spoken = false): Content {
  if (estimate.kind !== 'estimate') return missing(estimate);
  const value = formatValue(estimate, spoken ? unit : bare(unit));
  return html`${value} <span class="interval">${formatInterval(estimate, unit)}</span>`;
}

/** A cell with what one period may bring; parameters as for {@link estimateCell}. */
export function predictionCell(prediction: PredictionOrRefused, unit: Unit, spoken = false): Content {
  if (prediction.kind !== 'prediction') return missing(prediction);
  const interval = formatInterval(prediction, unit);
  return spoken ? `${interval}\u00a0${unit.many}` : interval;
}

/** The percentile of a class of jobs in two cells: long run, and one period; in days. */
export function percentileCells(one: JobClass, share: number): [Content, Content] {
  const percentile: Percentile | undefined = one.percentiles.find((candidate) => candidate.share === share);
  if (percentile === undefined) return ['', ''];
  return [estimateCell(percentile.longRun, DAYS), predictionCell(percentile.onePeriod, DAYS)];
}
