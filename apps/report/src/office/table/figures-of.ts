import type { ReportDocument } from '@buildweek/results';
import { isDecision, shownResults } from '../document.ts';
import { decisionRows } from './decision-rows.ts';
import type { FigureRow } from './figure-row.ts';
import { hoursRows, leadTimeRows, targetRows, weekRows } from './jobs-rows.ts';
import { moneyRows } from './money-rows.ts';
import { handRows, originRows } from './origin-rows.ts';
import { buildRows, peopleRows, queueRows, troubleRows, unitUseRows } from './resource-rows.ts';

/**
 * Every number of a document, one row each, in base units: hours, shares from 0 to 1, amounts in the currency of the
 * scenario. Of a decision the lab that is recommended stands in full; today's lab stands in the options.
 */
export function figuresOf(document: ReportDocument): FigureRow[] {
  const results = shownResults(document);
  return [
    ...(isDecision(document) ? decisionRows(document) : []),
    ...targetRows(results),
    ...leadTimeRows(results),
    ...hoursRows(results),
    ...peopleRows(results),
    ...unitUseRows(results),
    ...buildRows(results),
    ...troubleRows(results),
    ...moneyRows(results),
    ...queueRows(results),
    ...weekRows(results),
    ...handRows(results),
    ...originRows(document),
  ];
}
