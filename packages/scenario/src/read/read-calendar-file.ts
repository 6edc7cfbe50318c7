import { type CalendarEvent, CalendarFileError, calendarEvents } from '../calendar-file/calendar-events.ts';
import { type UsualWeek, usualWeekOf } from '../calendar-file/usual-week.ts';
import type { Fields } from '../fields.ts';
import type { ScenarioExtraWindow } from '../scenario.ts';
import { dateSpan } from '../words/dates.ts';
import { type Wording, WordingError } from '../words/wording-error.ts';

const DAY = 86_400_000;
const HOUR = 3_600_000;
/** So far ahead of the start of the plan events are looked up. */
const YEARS = 3;
const WEEKS_PER_YEAR = 52;
const FROM_FILE = /^from\s+(\S+?)(?:\s*,\s*events\s+(.+))?$/i;
const EVENT_FILE = /^from\s+\S+\.ics\b/i;

/** Whether hours are those of a calendar file. */
export function isFromFile(fields: Fields, key: string): boolean {
  const node = fields.node(key);
  return node?.kind === 'scalar' && EVENT_FILE.test(node.text);
}

/** `2027-04-02`, `2027-12-24 to 2028-01-01`, or `from holidays.ics`: the whole days of its events. */
export function closedDays(fields: Fields): Wording<number[]> {
  return (text) => {
    if (!EVENT_FILE.test(text)) return [...dateSpan(text)];
    const { path, events } = eventsOf(fields, text);
    const days = events
      .filter(({ isWholeDay }) => isWholeDay)
      .flatMap(({ start, end }) => {
        const first = Math.floor(start / DAY);
        return Array.from({ length: Math.max(1, Math.round((end - start) / DAY)) }, (_, day) => first + day);
      });
    if (days.length === 0) {
      throw new WordingError(
        `${path} holds no event of whole days in the ${YEARS} years from the start of the plan.`,
        'a calendar file with the closed days as events of whole days',
        'closed: [2027-04-02]',
      );
    }
    return days;
  };
}

/** `from shifts.ics, events Early`: every event is a window in which people are there. */
export function shiftsFrom(fields: Fields): Wording<UsualWeek> {
  return (text) => {
    const { path, events, wanted } = eventsOf(fields, text);
    const windows = events
      .filter(({ isWholeDay, start, end }) => !isWholeDay && end > start)
      .map(({ start, end }): ScenarioExtraWindow => {
        const day = Math.floor(start / DAY);
        return { day, span: { fromHour: (start - day * DAY) / HOUR, toHour: (end - day * DAY) / HOUR } };
      });
    if (windows.length > 0) return usualWeekOf(windows, startOf(fields) / DAY, YEARS * WEEKS_PER_YEAR);
    const which =
      wanted === null ? 'no event with hours' : `no event with hours whose name begins with "${wanted}"`;
    throw new WordingError(
      `${path} holds ${which} in the ${YEARS} years from the start of the plan.`,
      'a calendar file with the shifts as events',
      'from shifts.ics, events Early',
    );
  };
}

interface FileEvents {
  readonly path: string;
  readonly events: readonly CalendarEvent[];
  readonly wanted: string | null;
}

function eventsOf(fields: Fields, text: string): FileEvents {
  const [, path = '', wanted = null] = FROM_FILE.exec(text.trim()) ?? [];
  const source = fields.reading.files.text(path);
  const starts = startOf(fields);
  const from = starts - 7 * DAY;
  try {
    const events = calendarEvents(source, zoneOf(fields), from, starts + YEARS * 366 * DAY);
    const begins = wanted?.trim().toLowerCase() ?? '';
    return {
      path,
      wanted: wanted?.trim() ?? null,
      events: events.filter(({ name }) => name.toLowerCase().startsWith(begins)),
    };
  } catch (error) {
    if (!(error instanceof CalendarFileError)) throw error;
    throw new WordingError(
      `${path} is no calendar that can be read: ${error.message}`,
      'a calendar file (iCalendar, RFC 5545)',
      'the file as the calendar program writes it',
    );
  }
}

/** Start of the plan as it is written; what is wrong with it is told where it is read. */
function startOf(fields: Fields): number {
  const node = fields.reading.nodeAt(['starts']);
  const written = node?.kind === 'scalar' ? Date.parse(`${node.text.trim()}T00:00Z`) : Number.NaN;
  return Number.isNaN(written) ? 0 : written;
}

function zoneOf(fields: Fields): string | null {
  const node = fields.reading.nodeAt(['zone']);
  return node?.kind === 'scalar' ? node.text.trim() : null;
}
