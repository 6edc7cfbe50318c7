import { formatInterval, formatRange, formatValue, type Unit, unnamed } from '@buildweek/charts';
import {
  type EstimateOrRefused,
  moneyFigure,
  type Never,
  type PredictionOrRefused,
  type Refused,
} from '@buildweek/results';
import type { Cell, Grid, GridColumn } from './block.ts';

const SUPERSCRIPTS = ['⁰', '¹', '²', '³', '⁴', '⁵', '⁶', '⁷', '⁸', '⁹'] as const;

/** Writes the cells of one table and gathers the reasons why numbers are missing in it. */
export class Cells {
  private readonly reasons: string[] = [];

  private missing(value: Refused | Never): string {
    const known = this.reasons.indexOf(value.reason);
    const number = known >= 0 ? known + 1 : this.reasons.push(value.reason);
    const mark = [...String(number)].map((digit) => SUPERSCRIPTS[Number(digit)] ?? '').join('');
    return `${value.kind === 'never' ? 'later than the plan' : 'not given'}${mark}`;
  }

  /** An estimate with its interval. @param spoken whether the unit is written in the cell; else it stands in the heading */
  estimate(estimate: EstimateOrRefused | undefined, unit: Unit, spoken = false): Cell {
    if (estimate === undefined) return '';
    if (estimate.kind !== 'estimate') return this.missing(estimate);
    const value = formatValue(estimate, spoken ? unit : unnamed(unit));
    const range = formatRange(estimate, unit);
    return range === null ? value : { value, range };
  }

  /** What one period may bring. */
  prediction(prediction: PredictionOrRefused | undefined, unit: Unit, spoken = false): Cell {
    if (prediction === undefined) return '';
    if (prediction.kind !== 'prediction') return this.missing(prediction);
    const interval = formatInterval(prediction, unit);
    return spoken && unit.many !== '' ? `${interval}\u00a0${unit.many}` : interval;
  }

  /** An amount of money, without its currency. @param decimals that are always shown */
  money(estimate: EstimateOrRefused, decimals: number): Cell {
    if (estimate.kind !== 'estimate') return this.missing(estimate);
    const { value, range } = moneyFigure(estimate, decimals);
    return range === null ? value : { value, range };
  }

  /** The table of the cells that were written; none without rows. */
  grid(caption: string, columns: readonly GridColumn[], rows: readonly (readonly Cell[])[]): Grid[] {
    return rows.length === 0 ? [] : [{ kind: 'grid', caption, columns, rows, reasons: this.reasons }];
  }
}

/** A column of numbers. */
export function numbers(title: string): GridColumn {
  return { title, numeric: true };
}
