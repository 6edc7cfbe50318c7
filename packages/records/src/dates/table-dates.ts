import { shortened } from '../columns/table-head.ts';
import { TableProblem } from '../table-problem.ts';
import { LabClock } from './lab-clock.ts';
import type { OrderEvidence } from './order-evidence.ts';
import { type DateOrder, dayOf, writtenDate } from './written-date.ts';

const DAY = 86_400_000;

/** A moment as a cell tells it. */
export interface Moment {
  /** Civil time of the lab. */
  readonly at: number;
  readonly hasClock: boolean;
  readonly trouble: 'hour shown twice' | 'hour left out' | null;
}

/** Reads the dates of one table, all with the same order of day and month. */
export class TableDates {
  /** Null where no date needs it. */
  readonly order: DateOrder | null;
  private readonly clock: LabClock | null;

  /** @param zone of the lab; null when it is not known, and clocks are taken as they are written */
  constructor(order: DateOrder | null, zone: string | null) {
    this.order = order;
    this.clock = zone === null ? null : new LabClock(zone);
  }

  /**
   * @param hasClocks whether the column tells hours; midnights are dates alone otherwise
   * @returns null when the cell is no date, or none with this order
   */
  read(cell: string, hasClocks: boolean): Moment | null {
    const date = writtenDate(cell);
    if (date === null) return null;
    const day = dayOf(date, this.order ?? 'day first');
    if (day === null) return null;
    const { clock, offset } = date;
    if (clock === null || (!hasClocks && clock === 0))
      return { at: day * DAY, hasClock: false, trouble: null };
    const civil = day * DAY + clock;
    if (this.clock === null) return { at: civil, hasClock: true, trouble: null };
    if (offset !== null) return { at: this.clock.at(civil - offset), hasClock: true, trouble: null };
    const shown = this.clock.shown(civil);
    return { at: shown.civil, hasClock: true, trouble: shown.trouble };
  }
}

/**
 * @returns null when no date needs it
 * @throws TableProblem when day and month cannot be told apart
 */
export function decidedOrder(evidence: OrderEvidence, key: string): DateOrder | null {
  const order = evidence.order();
  if (order === 'none needed') return null;
  if (order === 'day first' || order === 'month first') return order;
  const write = `"${key}: day first" or "${key}: month first" in a mapping file (--mapping FILE)`;
  if (order === 'mixed') {
    throw new TableProblem('Some dates have the day first, others the month.', {
      row: evidence.dayFirstRows[0] ?? null,
      found: `first numbers above 12 in rows ${evidence.dayFirstRows.join(', ')} (${evidence.dayFirst} in all), second numbers above 12 in rows ${evidence.monthFirstRows.join(', ')} (${evidence.monthFirst} in all)`,
      expected: 'one order in all dates, or the year first (2026-03-04)',
      write: `${write}; the others then count as unreadable`,
    });
  }
  throw new TableProblem('It cannot be told which number is the day and which the month.', {
    row: evidence.example?.row ?? null,
    found: shortened(evidence.example?.cell ?? ''),
    expected: 'at least one date with a number above 12, such as 25/03/2026, or the year first (2026-03-04)',
    write,
  });
}

/**
 * Times of universal time tell the hours of a lab only when its zone is known; with other offsets the clock is taken as
 * it is written.
 *
 * @param cells of the columns of dates
 * @throws TableProblem when all clocks are in universal time and no zone is given
 */
export function checkOffsets(cells: Iterable<{ readonly row: number; readonly cell: string }>): void {
  let first: { readonly row: number; readonly cell: string } | null = null;
  for (const one of cells) {
    const offset = writtenDate(one.cell)?.offset ?? null;
    if (offset === null) continue;
    if (offset !== 0) return;
    first ??= one;
  }
  if (first === null) return;
  throw new TableProblem('These times are universal time, and the zone of the lab is not known.', {
    row: first.row,
    found: shortened(first.cell),
    expected: 'the zone of the lab, so that hours of the week are those on its wall clock',
    write:
      '--zone Europe/Lisbon, or "zone: Europe/Lisbon" in a mapping file ("zone: UTC" keeps them as they are)',
  });
}
