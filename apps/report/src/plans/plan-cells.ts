import { type EstimateOrRefused, type WrittenUnit, writtenText } from '@buildweek/results';
import { type Html, html } from '../html.ts';
import type { Reasons } from '../reasons.ts';

/** A value with its interval in a table whose heading says the unit; or a mark that leads to the reason why not. */
export function cell(estimate: EstimateOrRefused, unit: WrittenUnit, reasons: Reasons): Html {
  if (estimate.kind === 'estimate') return html`${writtenText(estimate, unit)}`;
  const words = estimate.kind === 'never' ? 'later than the plan' : 'not given';
  return html`<span class="none">${words}<sup>${reasons.numberOf(estimate.reason)}</sup></span>`;
}
