import type { HourSpan } from '@buildweek/model';
import { nearest } from '../nearest.ts';
import { clockTime } from './dates.ts';
import { readPart, type Wording, WordingError } from './wording-error.ts';

/** Days as they are written in a file, Monday first. */
export const DAY_NAMES: readonly string[] = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];
const LONG: readonly string[] = [
  'monday',
  'tuesday',
  'wednesday',
  'thursday',
  'friday',
  'saturday',
  'sunday',
];
const EXPECTED = 'days such as mon, mon-fri, "tue, thu", weekdays or daily';

/** A window that crosses midnight and is longer than this was probably written backwards. */
const LONGEST_NIGHT_HOURS = 14;

/** `mon`, `mon-fri`, `sat, sun`, `weekdays`, `daily`: positions of days, Monday is 0. @throws WordingError */
export const weekdays: Wording<readonly number[]> = (text) => {
  const days = new Set<number>();
  for (const part of text.toLowerCase().split(/\s*,\s*|\s+and\s+/)) {
    if (part === 'daily') for (let day = 0; day < 7; day++) days.add(day);
    else if (part === 'weekdays') for (let day = 0; day < 5; day++) days.add(day);
    else {
      const [first = '', last, ...more] = part.split(/\s*[-–]\s*/);
      if (more.length > 0) throw new WordingError(`"${text}" names no days.`, EXPECTED, 'mon-fri');
      const from = dayNamed(first, text);
      const to = last === undefined ? from : dayNamed(last, text);
      for (let day = from; ; day = (day + 1) % 7) {
        days.add(day);
        if (day === to) break;
      }
    }
  }
  return [...days].sort((a, b) => a - b);
};

/**
 * `07:00-11:30 12:00-15:30`: windows of a day, in hours since its midnight. An end at or before the start is
 * on the next day. @throws WordingError for windows that are empty or run backwards
 */
export const windows: Wording<readonly HourSpan[]> = (text) => {
  const expected = 'windows such as 07:00-11:30 12:00-15:30';
  const parts = text
    .replace(/\s*[-–]\s*/g, '-')
    .split(/[\s,]+/)
    .filter((part) => part !== '');
  if (parts.length === 0) throw new WordingError('There is no window.', expected, '08:00-16:00');
  return parts.map((part) => {
    const [first = '', last, ...more] = part.split('-');
    if (last === undefined || more.length > 0) {
      throw new WordingError(`"${part}" is not a window.`, expected, '08:00-16:00');
    }
    const [fromHour, end] = readPart(text, part, clockTimes);
    if (end === fromHour) {
      throw new WordingError(`The window ${part} is empty.`, expected, text.replace(part, '00:00-24:00'));
    }
    const toHour = end < fromHour ? end + 24 : end;
    if (end < fromHour && toHour - fromHour > LONGEST_NIGHT_HOURS) {
      throw new WordingError(
        `The window ${part} runs backwards (past midnight it would be ${toHour - fromHour} hours long).`,
        `${expected}; the earlier time first`,
        text.replace(part, `${last}-${first}`),
      );
    }
    return { fromHour, toHour };
  });
};

/** Both ends of a window; whole hours that stand alone are mended together. */
const clockTimes: Wording<readonly [number, number]> = (window) => {
  const [first = '', last = ''] = window.split('-');
  try {
    return [clockTime(first), clockTime(last)];
  } catch (error) {
    if (!(error instanceof WordingError)) throw error;
    const mended = window.replace(/(?<![:\d])(\d{1,2})(?![:\d])/g, '$1:00');
    throw new WordingError(error.message, error.expected, mended === window ? '08:00-16:00' : mended);
  }
};

function dayNamed(word: string, text: string): number {
  const short = DAY_NAMES.indexOf(word);
  const day = short >= 0 ? short : LONG.indexOf(word);
  if (day >= 0) return day;
  const meant =
    nearest(word, LONG) ??
    nearest(word, DAY_NAMES) ??
    DAY_NAMES.find((candidate) => word.startsWith(candidate));
  throw new WordingError(
    `"${word}" is not a day of the week.`,
    EXPECTED,
    meant === undefined ? 'mon-fri' : text.toLowerCase().replace(word, meant.slice(0, 3)),
  );
}
