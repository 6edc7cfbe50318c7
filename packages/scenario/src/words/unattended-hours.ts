import type { HourSpan } from '@buildweek/model';
import { clockTime } from './dates.ts';
import { weekdays } from './week.ts';
import { readPart, type Wording, WordingError } from './wording-error.ts';

const WEEK = 168;
const EXPECTED =
  'always, never, or hours of the week such as "mon-thu 16:00-07:00" or "fri 16:00 to mon 07:00"';
const EXAMPLE = 'mon-thu 16:00-07:00';

/**
 * When something may run with nobody there: `always`, `never`, `mon-thu 16:00-07:00`,
 * `fri 16:00 to mon 07:00`. An end at or before the start is on the next day.
 *
 * @returns hours since Monday 00:00, ends up to 336; null: always @throws WordingError
 */
export const unattendedSpans: Wording<readonly HourSpan[] | null> = (text) => {
  if (/^always$/i.test(text)) return null;
  if (/^never$/i.test(text)) return [];
  const between = /^(\S+)\s+(\S+)\s+(?:to|until|-)\s+(\S+)\s+(\S+)$/i.exec(text);
  if (between !== null) {
    const [fromDay = '', fromTime = '', toDay = '', toTime = ''] = between.slice(1);
    const fromHour = oneDay(fromDay) * 24 + readPart(text, fromTime, clockTime);
    const end = oneDay(toDay) * 24 + readPart(text, toTime, clockTime);
    return [{ fromHour, toHour: end > fromHour ? end : end + WEEK }];
  }
  const daily = /^(.*?)\s+(\S+?)\s*[-–]\s*(\d\S*)$/.exec(text);
  if (daily === null) throw new WordingError(`"${text}" is not a span of the week.`, EXPECTED, EXAMPLE);
  const start = readPart(text, daily[2] ?? '', clockTime);
  const end = readPart(text, daily[3] ?? '', clockTime);
  return readPart(text, daily[1] ?? '', weekdays).map((day) => ({
    fromHour: day * 24 + start,
    toHour: day * 24 + (end > start ? end : end + 24),
  }));
};

/**
 * Puts hours of the week together: what overlaps becomes one, what reaches over the end of the week comes out
 * as its end and its beginning.
 *
 * @returns ascending hours within 0 to 168, not overlapping; null when nothing of the week is left out
 */
export function unitedWeek(spans: readonly HourSpan[]): HourSpan[] | null {
  const pieces = spans
    .flatMap(({ fromHour, toHour }) =>
      toHour <= WEEK
        ? [{ fromHour, toHour }]
        : [
            { fromHour, toHour: WEEK },
            { fromHour: 0, toHour: toHour - WEEK },
          ],
    )
    .sort((a, b) => a.fromHour - b.fromHour);
  const united: { fromHour: number; toHour: number }[] = [];
  for (const piece of pieces) {
    const last = united.at(-1);
    if (last !== undefined && piece.fromHour <= last.toHour)
      last.toHour = Math.max(last.toHour, piece.toHour);
    else united.push({ ...piece });
  }
  const [first] = united;
  return first !== undefined && first.fromHour === 0 && first.toHour >= WEEK ? null : united;
}

function oneDay(word: string): number {
  const days = weekdays(word);
  if (days.length === 1) return days[0] ?? 0;
  throw new WordingError(
    `"${word}" is more than one day.`,
    'one day with its time on either side of "to"',
    'fri 16:00 to mon 07:00',
  );
}
