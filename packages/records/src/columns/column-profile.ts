import { writtenDate } from '../dates/written-date.ts';
import { readNumber } from '../text/read-number.ts';

/** What stands in a column, over the rows that were looked at. */
export interface ColumnProfile {
  readonly rows: number;
  readonly filled: number;
  readonly dates: number;
  /** Dates with a clock other than midnight. */
  readonly clocks: number;
  /** Numbers, with or without a unit. */
  readonly numbers: number;
  /** Numbers without a word. */
  readonly bare: number;
  /** Different cells; no more than `DIFFERENT` are told apart. */
  readonly different: number;
  readonly addresses: number;
}

const DIFFERENT = 2000;

/** @param cells of one column */
export function columnProfile(cells: readonly string[]): ColumnProfile {
  const different = new Set<string>();
  let filled = 0;
  let dates = 0;
  let clocks = 0;
  let numbers = 0;
  let bare = 0;
  let addresses = 0;
  for (const cell of cells) {
    const text = cell.trim();
    if (text === '') continue;
    filled++;
    if (different.size < DIFFERENT) different.add(text);
    const date = writtenDate(text);
    if (date !== null) {
      dates++;
      if (date.clock !== null && date.clock !== 0) clocks++;
    }
    if (readNumber(text, false) !== null) numbers++;
    if (/^[+-]?[\d.,'\s]+$/.test(text)) bare++;
    if (/^\S+@\S+\.\S+$/.test(text)) addresses++;
  }
  return { rows: cells.length, filled, dates, clocks, numbers, bare, different: different.size, addresses };
}

/** Whether most of what is filled in are dates. */
export function holdsDates({ filled, dates }: ColumnProfile): boolean {
  return filled > 0 && dates >= 0.6 * filled;
}

/** Whether most of what is filled in are numbers, and not the day numbers of spreadsheets. */
export function holdsNumbers(profile: ColumnProfile): boolean {
  return profile.filled > 0 && profile.bare >= 0.8 * profile.filled && !holdsDates(profile);
}
