import {
  formatInterval,
  formatRange,
  formatValue,
  spreadFigure,
  type Unit,
  unnamed,
} from '@buildweek/charts';
import {
  type EstimateOrRefused,
  type Never,
  type PredictionOrRefused,
  periodName,
  type Refused,
  type Run,
  type Spread,
} from '@buildweek/results';
import { type Content, type Html, html } from './html.ts';
import type { Reasons } from './reasons.ts';

/** The measured period as people speak of it: "one quarter". */
export function onePeriod(run: Run): string {
  return `one ${periodName(run.weeks)}`;
}

function missing(value: Refused | Never, reasons: Reasons | null): Html {
  const words = value.kind === 'never' ? 'later than the plan' : 'not given';
  return reasons === null
    ? html`<span class="none">${words}: ${value.reason}</span>`
    : html`<span class="none">${words}<sup>${reasons.numberOf(value.reason)}</sup></span>`;
}

/** How a cell is written. */
export interface CellManner {
  /** Whether the unit is written in the cell; else it stands in the heading. */
  readonly spoken?: boolean;
  /** Where reasons for missing numbers are gathered; without it they stand in the cell. */
  readonly reasons?: Reasons;
}

/** A cell with an estimate and its interval, or why there is none. */
export function estimateCell(estimate: EstimateOrRefused, unit: Unit, manner: CellManner = {}): Content {
  if (estimate.kind !== 'estimate') return missing(estimate, manner.reasons ?? null);
  const value = formatValue(estimate, manner.spoken === true ? unit : unnamed(unit));
  const range = formatRange(estimate, unit);
  return range === null ? value : html`${value} <span class="interval">${range}</span>`;
}

/** A cell with what one period may bring, or why it is not known. */
export function predictionCell(
  prediction: PredictionOrRefused,
  unit: Unit,
  manner: CellManner = {},
): Content {
  if (prediction.kind !== 'prediction') return missing(prediction, manner.reasons ?? null);
  const interval = formatInterval(prediction, unit);
  return manner.spoken === true ? `${interval}\u00a0${unit.many}` : interval;
}

/** A cell with a typical value and its spread over plays; the unit stands in the heading. */
export function spreadCell(spread: Spread, unit: Unit): Content {
  const { value, range } = spreadFigure(spread, unit);
  return range === null ? value : html`${value} <span class="interval">${range}</span>`;
}
