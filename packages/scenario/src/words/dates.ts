import { readPart, type Wording, WordingError } from './wording-error.ts';

const DAY_MILLISECONDS = 86_400_000;
const DATE = /^(\d{4})-(\d{2})-(\d{2})$/;

/** Days since 1970-01-01 of a date that exists. */
export type DayNumber = number;

/** `2027-03-01`. @throws WordingError for other forms and for days that do not exist */
export const date: Wording<DayNumber> = (text) => {
  const expected = 'a date: year, month, day';
  const parts = DATE.exec(text);
  if (parts === null) {
    throw new WordingError(`"${text}" is not a date.`, expected, rewritten(text) ?? '2027-03-01');
  }
  const [year = 0, month = 0, day = 0] = parts.slice(1).map(Number);
  const days = Date.UTC(year, month - 1, day) / DAY_MILLISECONDS;
  if (dateText(days) === text) return days;
  const write =
    month >= 1 && month <= 12 ? dateText(Date.UTC(year, month, 0) / DAY_MILLISECONDS) : '2027-03-01';
  throw new WordingError(`The date ${text} does not exist.`, expected, write);
};

/** A Monday. @throws WordingError for other days, proposing the Monday before */
export const monday: Wording<DayNumber> = (text) => {
  const day = date(text);
  const sinceMonday = weekdayOf(day);
  if (sinceMonday === 0) return day;
  throw new WordingError(
    `${text} is a ${WEEKDAYS[sinceMonday]}.`,
    'a Monday, since weeks start there',
    dateText(day - sinceMonday),
  );
};

/** One date, or `2027-12-24 to 2028-01-01`: all days of it. @throws WordingError */
export const dateSpan: Wording<readonly DayNumber[]> = (text) => {
  const [first = '', last, ...more] = text.split(/\s+to\s+/);
  const from = readPart(text, first.trim(), date);
  const to = last === undefined ? from : readPart(text, last.trim(), date);
  if (more.length > 0 || to < from) {
    throw new WordingError(
      `"${text}" runs backwards.`,
      'a date, or two with "to" between them, the earlier first',
      `${last} to ${first}`,
    );
  }
  if (to - from > 3660) {
    throw new WordingError(
      'This spans more than ten years.',
      'a shorter stretch of days',
      `${first} to ${first}`,
    );
  }
  return Array.from({ length: to - from + 1 }, (_, index) => from + index);
};

/** `2027-03-01 09:00`: day and hour of the wall clock. @throws WordingError */
export const dateTime: Wording<{ readonly day: DayNumber; readonly hour: number }> = (text) => {
  const parts = /^(\S+?)(?:\s+|T)(\d{1,2}:\d{2})$/.exec(text);
  if (parts === null) {
    const day = DATE.test(text) ? `${text} 09:00` : '2027-03-01 09:00';
    throw new WordingError(`"${text}" is not a date with a time.`, 'a date and a time', day);
  }
  return { day: readPart(text, parts[1] ?? '', date), hour: readPart(text, parts[2] ?? '', clockTime) };
};

/** `14:00` as hours, from 00:00 to 24:00. @throws WordingError */
export const clockTime: Wording<number> = (text) => {
  const parts = /^(\d{1,2}):(\d{2})$/.exec(text);
  const hour = Number(parts?.[1]);
  const minute = Number(parts?.[2]);
  if (parts !== null && minute < 60 && (hour < 24 || (hour === 24 && minute === 0)))
    return hour + minute / 60;
  const bare = /^(\d{1,2})(?:[.h ]*(\d{2}))?$/.exec(text);
  const write = bare !== null && Number(bare[1]) < 24 ? `${bare[1]}:${bare[2] ?? '00'}` : '14:00';
  throw new WordingError(`"${text}" is not a time of day.`, 'hours and minutes from 00:00 to 24:00', write);
};

export const WEEKDAYS = [
  'Monday',
  'Tuesday',
  'Wednesday',
  'Thursday',
  'Friday',
  'Saturday',
  'Sunday',
] as const;

/** 0 is Monday. */
export function weekdayOf(day: DayNumber): number {
  // 1970-01-01 was a Thursday.
  return (((day + 3) % 7) + 7) % 7;
}

/** @returns `2027-03-01` */
export function dateText(day: DayNumber): string {
  const instant = new Date(day * DAY_MILLISECONDS);
  return Number.isNaN(instant.getTime()) ? '' : instant.toISOString().slice(0, 10);
}

/** Other orders of a date that leave no doubt. */
function rewritten(text: string): string | null {
  const dotted = /^(\d{1,2})\.(\d{1,2})\.(\d{4})$/.exec(text);
  if (dotted !== null) return `${dotted[3]}-${two(dotted[2])}-${two(dotted[1])}`;
  const loose = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$/.exec(text);
  return loose === null ? null : `${loose[1]}-${two(loose[2])}-${two(loose[3])}`;
}

function two(digits: string | undefined): string {
  return (digits ?? '').padStart(2, '0');
}
