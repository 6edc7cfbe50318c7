import type { HourSpan } from '@buildweek/model';
import type { Fields } from '../fields.ts';
import type { ScenarioCalendar, ScenarioExtraWindow } from '../scenario.ts';
import type { SourceNode } from '../source/source-node.ts';
import { HOURS_KEYS, hoursKeyMeant } from '../words/closed-days.ts';
import { date, WEEKDAYS } from '../words/dates.ts';
import { said } from '../words/mended.ts';
import { weekdays, windows } from '../words/week.ts';
import { readPart, type Wording, WordingError } from '../words/wording-error.ts';
import { closedDays, isFromFile, shiftsFrom } from './read-calendar-file.ts';

/** Name of the hours that are there without being described: day and night. */
export const ALWAYS = 'always';

/** Keys of hours that are no names or days. */
const RESERVED: readonly string[] = HOURS_KEYS;

export const ALWAYS_OPEN: ScenarioCalendar = {
  name: ALWAYS,
  weekly: [{ fromHour: 0, toHour: 168 }],
  closedDays: [],
  extra: [],
};

/** The hours of the file by name, and the days that are closed for all of them. */
export function readHours(fields: Fields): { calendars: ScenarioCalendar[]; closedDays: number[] } {
  const hours = fields.group('hours');
  const calendars: ScenarioCalendar[] = [];
  for (const name of fields.names('hours')) {
    if (RESERVED.includes(name)) continue;
    if (name === ALWAYS) {
      hours.report(
        name,
        'key',
        '"always" is day and night and need not be described.',
        'another name',
        'day',
      );
      continue;
    }
    if (hours.node(name)?.kind === 'map') calendars.push(readCalendar(hours.group(name), name));
    else if (isFromFile(hours, name)) {
      const shifts = hours.read(name, shiftsFrom(fields));
      if (shifts !== undefined) calendars.push({ name, extra: [], ...shifts });
    } else if (hours.read(name, alwaysWord) === true) calendars.push({ ...ALWAYS_OPEN, name });
  }
  return { calendars, closedDays: sorted(hours.readList('closed', closedDays(fields)).flat()) };
}

const alwaysWord: Wording<true> = (text) => {
  if (/^always$/i.test(text)) return true;
  throw new WordingError(
    `"${text}" names no days.`,
    'days with their windows, always, or a calendar file',
    '{ mon-fri: 07:00-11:30 12:00-15:30 }',
  );
};

/** The windows of a week, under days as keys. */
export function readCalendar(fields: Fields, name: string): ScenarioCalendar {
  const weekly: { span: HourSpan; key: string }[] = [];
  for (const key of fields.names()) {
    if (RESERVED.includes(key)) continue;
    const days = readDays(fields, key);
    // What stands at a key that is no day may be anything.
    if (days.length === 0) continue;
    const spans = fields.readList(key, windows).flat();
    for (const day of days) {
      for (const span of spans) {
        weekly.push({ span: { fromHour: day * 24 + span.fromHour, toHour: day * 24 + span.toHour }, key });
      }
    }
  }
  weekly.sort((a, b) => a.span.fromHour - b.span.fromHour || a.span.toHour - b.span.toHour);
  reportOverlaps(fields, weekly);
  if (fields.names().length === 0) {
    fields.reading.report(fields.path, 'value', {
      message: `The hours "${name}" have no windows.`,
      expected: 'days with their windows',
      write: '{ mon-fri: 07:00-11:30 12:00-15:30 }',
    });
  }
  return {
    name,
    weekly: weekly.map(({ span }) => span),
    closedDays: sorted(fields.readList('closed', closedDays(fields)).flat()),
    extra: fields.readList('extra', extraWindows).flat(),
  };
}

function readDays(fields: Fields, key: string): readonly number[] {
  const meant = hoursKeyMeant(key);
  if (meant !== null) {
    const expected = 'days with their windows, or closed or extra with dates';
    fields.report(key, 'key', `"${key}" is not known here; did you mean "${meant}"?`, expected, meant);
    return [];
  }
  try {
    return said(key, weekdays);
  } catch (error) {
    fields.reading.reportWording(fields.pathOf(key), 'key', key, error);
    return [];
  }
}

/** Windows that overlap are a mistake; windows that touch are one. Said once for the days of one key. */
function reportOverlaps(fields: Fields, weekly: readonly { span: HourSpan; key: string }[]): void {
  const reported = new Set<string>();
  weekly.forEach(({ span, key }, index) => {
    const isLast = index === weekly.length - 1;
    const next = weekly[isLast ? 0 : index + 1];
    if (next === undefined) return;
    const shift = isLast ? 168 : 0;
    if (span.toHour <= next.span.fromHour + shift || reported.has(`${key}\n${next.key}`)) return;
    reported.add(`${key}\n${next.key}`);
    const end = Math.max(span.toHour, next.span.toHour + shift);
    fields.report(
      next.key,
      'value',
      `The window ${spanText(next.span)} overlaps ${spanText(span)}.`,
      'windows that do not overlap',
      `${clockText(span.fromHour)}-${clockText(end)}`,
    );
  });
}

const extraWindows: Wording<ScenarioExtraWindow[]> = (text) => {
  const [first = '', ...rest] = text.split(/\s+/);
  const day = readPart(text, first, date);
  return readPart(text, rest.join(' '), windows).map((span) => ({ day, span }));
};

function spanText(span: HourSpan): string {
  return `${WEEKDAYS[Math.floor(span.fromHour / 24) % 7]} ${clockText(span.fromHour)}-${clockText(span.toHour)}`;
}

function clockText(hour: number): string {
  const minutes = Math.round(hour * 60) % 1440;
  return `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;
}

function sorted(days: readonly number[]): number[] {
  return [...new Set(days)].sort((a, b) => a - b);
}

/** Whether hours are described in place instead of being named. */
export function isInPlace(node: SourceNode | undefined): boolean {
  return node?.kind === 'map';
}
