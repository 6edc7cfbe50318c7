import { monthNamed } from './month-names.ts';

/** Which number of a date stands first, where the year does not. */
export type DateOrder = 'day first' | 'month first';

/** A date as a cell writes it, before it is known which of two numbers is the day. */
export interface WrittenDate {
  readonly shape: 'year first' | 'year last' | 'named month' | 'serial number';
  readonly year: number;
  /** Month and day; with the year last the two numbers as they stand. */
  readonly first: number;
  readonly second: number;
  /** What stands between the numbers. */
  readonly mark: string;
  /** Milliseconds since midnight; null for a date alone. */
  readonly clock: number | null;
  /** Milliseconds that the clock is ahead of universal time; null when the cell does not say. */
  readonly offset: number | null;
}

const DAY = 86_400_000;
const MINUTE = 60_000;
const YEAR_FIRST = /^(\d{4})([-/.]?)(\d{1,2})\2(\d{1,2})(?=$|[T\s,_])/;
const YEAR_LAST = /^(\d{1,2})([./-])\s?(\d{1,2})\2\s?(\d{4}|\d{2})(?=$|[T\s,])/;
const DAY_NAMED_MONTH =
  /^(\d{1,2})(?:\.|st|nd|rd|th)?[ -]?(?:de )?(\p{L}{3,12})\.?[ ,-]*(?:de )?(\d{4}|\d{2})(?=$|[T\s,])/u;
const NAMED_MONTH_DAY = /^(\p{L}{3,12})\.? (\d{1,2})(?:st|nd|rd|th)?,? (\d{4})(?=$|[T\s,])/u;
const DAY_OF_WEEK = /^\p{L}{2,10}\.?,?\s+(?=\d)/u;
const SERIAL = /^(\d{5})(?:[.,](\d+))?$/;
const CLOCK =
  /^(?:[T\s,_-]|at |um |à )*(\d{1,2})(?:[:.hH](\d{2}))?(?:[:.](\d{2})(?:[.,](\d{1,9}))?)?\s*([ap]\.?\s?m\.?|Uhr|h)?\s*(Z|UTC|GMT|[+-]\d{2}(?::?\d{2})?|(?:UTC|GMT)[+-]\d{1,2}(?::?\d{2})?)?$/i;
const COMPACT_CLOCK = /^T(\d{2})(\d{2})(\d{2})?(Z|[+-]\d{4})?$/;
/** 1970-01-01 in the day numbers of spreadsheets, whose first day is 1900-01-01 and which have a 1900-02-29. */
const SERIAL_EPOCH = 25_569;
/** Day numbers from 1982 to 2119; others are ordinary numbers. */
const SERIALS = [30_000, 80_000] as const;

/**
 * Reads a date with or without a clock: ISO 8601, numbers with the year last, the names of months, and the day numbers
 * of spreadsheets; clocks of 24 and 12 hours, with the offset from universal time or without.
 *
 * @returns null when the cell is no date
 */
export function writtenDate(cell: string): WrittenDate | null {
  const text = cell.trim();
  if (text.length < 5 || text.length > 60) return null;
  return anyShape(text) ?? anyShape(text.replace(DAY_OF_WEEK, ''));
}

function anyShape(text: string): WrittenDate | null {
  return yearFirst(text) ?? yearLast(text) ?? namedMonth(text) ?? serialNumber(text);
}

/**
 * Days since 1970-01-01, or null when there is no such day.
 * @param order of numbers with the year last
 */
export function dayOf({ shape, year, first, second }: WrittenDate, order: DateOrder): number | null {
  const isSwapped = shape === 'year last' && order === 'day first';
  return dayNumber(year, isSwapped ? second : first, isSwapped ? first : second);
}

function yearFirst(text: string): WrittenDate | null {
  const found = YEAR_FIRST.exec(text);
  if (found === null) return null;
  const [all, year, mark = '', month, day] = found;
  return dated('year first', Number(year), Number(month), Number(day), mark, text.slice(all.length));
}

function yearLast(text: string): WrittenDate | null {
  const found = YEAR_LAST.exec(text);
  if (found === null) return null;
  const [all, first, mark = '', second, year = ''] = found;
  return dated('year last', fullYear(year), Number(first), Number(second), mark, text.slice(all.length));
}

function namedMonth(text: string): WrittenDate | null {
  const dayFirst = DAY_NAMED_MONTH.exec(text);
  const found = dayFirst ?? NAMED_MONTH_DAY.exec(text);
  if (found === null) return null;
  const [all, one = '', other = '', year = ''] = found;
  const month = monthNamed(dayFirst === null ? one : other);
  if (month === null) return null;
  const day = Number(dayFirst === null ? other : one);
  return dated('named month', fullYear(year), month, day, '', text.slice(all.length));
}

function serialNumber(text: string): WrittenDate | null {
  const found = SERIAL.exec(text);
  const day = Number(found?.[1]);
  if (found === null || day < SERIALS[0] || day > SERIALS[1]) return null;
  const date = new Date((day - SERIAL_EPOCH) * DAY);
  // Spreadsheets keep fractions of a day; what they mean are whole seconds.
  const clock = found[2] === undefined ? null : Math.round(Number(`0.${found[2]}`) * 86_400) * 1000;
  return {
    shape: 'serial number',
    year: date.getUTCFullYear(),
    first: date.getUTCMonth() + 1,
    second: date.getUTCDate(),
    mark: '',
    clock,
    offset: null,
  };
}

/** A date with the clock behind it, if that is one. */
function dated(
  shape: WrittenDate['shape'],
  year: number,
  first: number,
  second: number,
  mark: string,
  rest: string,
): WrittenDate | null {
  if (first < 1 || second < 1 || first > 31 || second > 31) return null;
  if (shape !== 'year last' && dayNumber(year, first, second) === null) return null;
  if (rest.trim() === '') return { shape, year, first, second, mark, clock: null, offset: null };
  const time = clockOf(rest);
  return time === null ? null : { shape, year, first, second, mark, ...time };
}

function clockOf(rest: string): { clock: number; offset: number | null } | null {
  const compact = COMPACT_CLOCK.exec(rest);
  const found = compact ?? CLOCK.exec(rest);
  if (found === null) return null;
  const [, hours, minutes = '0', seconds = '0'] = found;
  const [fraction, half, zone] =
    compact === null ? [found[4], found[5], found[6]] : [undefined, undefined, found[4]];
  if (compact === null && found[2] === undefined && !/^[aphu]/i.test(half ?? '')) return null;
  let hour = Number(hours);
  if (/^[ap]/i.test(half ?? '')) {
    if (hour < 1 || hour > 12) return null;
    hour = (hour % 12) + (/^p/i.test(half ?? '') ? 12 : 0);
  }
  const minute = Number(minutes);
  const second = Number(seconds);
  const isClock = hour < 24 ? minute < 60 && second <= 60 : hour === 24 && minute === 0 && second === 0;
  if (!isClock) return null;
  const thousandths = fraction === undefined ? 0 : Math.round(Number(`0.${fraction}`) * 1000);
  return {
    clock: hour * 60 * MINUTE + minute * MINUTE + second * 1000 + thousandths,
    offset: zone === undefined ? null : offsetOf(zone),
  };
}

function offsetOf(zone: string): number {
  const found = /([+-])(\d{1,2}):?(\d{2})?$/.exec(zone);
  if (found === null) return 0;
  const minutes = Number(found[2]) * 60 + Number(found[3] ?? 0);
  return (found[1] === '-' ? -minutes : minutes) * MINUTE;
}

/** Two digits are years of this century. */
function fullYear(year: string): number {
  return year.length === 2 ? 2000 + Number(year) : Number(year);
}

function dayNumber(year: number, month: number, day: number): number | null {
  if (month < 1 || month > 12 || year < 1970 || year > 2200) return null;
  const date = new Date(Date.UTC(year, month - 1, day));
  return date.getUTCDate() === day ? date.getTime() / DAY : null;
}
