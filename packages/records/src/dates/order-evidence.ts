import { type DateOrder, type WrittenDate, writtenDate } from './written-date.ts';

/** What the dates of a table tell of the order of day and month. */
export class OrderEvidence {
  /** Rows of dates whose first number is no month, the first few. */
  readonly dayFirstRows: number[] = [];
  /** Rows of dates whose second number is no month. */
  readonly monthFirstRows: number[] = [];
  dayFirst = 0;
  monthFirst = 0;
  /** Dates that could be either. */
  unclear = 0;
  /** One of them, as it is written. */
  example: { readonly row: number; readonly cell: string } | null = null;
  private dots = 0;

  look(cell: string, row: number): void {
    const date = writtenDate(cell);
    if (date !== null) this.take(date, cell, row);
  }

  private take({ shape, first, second, mark }: WrittenDate, cell: string, row: number): void {
    if (shape !== 'year last') return;
    if (first > 12) {
      this.dayFirst++;
      if (this.dayFirstRows.length < 3) this.dayFirstRows.push(row);
    } else if (second > 12) {
      this.monthFirst++;
      if (this.monthFirstRows.length < 3) this.monthFirstRows.push(row);
    } else if (first !== second) {
      this.unclear++;
      if (mark === '.') this.dots++;
      this.example ??= { row, cell };
    }
  }

  /**
   * The order, where values above 12 tell it; a few that contradict are mistakes in single cells. Dates with dots are
   * written with the day first wherever they are usual. `null` when it cannot be told.
   */
  order(): DateOrder | 'mixed' | 'none needed' | null {
    const told = this.dayFirst + this.monthFirst;
    if (told > 0) {
      if (this.monthFirst <= told * MISTAKES) return 'day first';
      return this.dayFirst <= told * MISTAKES ? 'month first' : 'mixed';
    }
    if (this.unclear === 0) return 'none needed';
    return this.dots === this.unclear ? 'day first' : null;
  }
}

/** Share of dates that may contradict the others. */
const MISTAKES = 0.02;
