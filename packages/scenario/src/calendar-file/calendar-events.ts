import ICAL from 'ical.js';
import { instantOf, isZone, wallClockOf } from '../zone.ts';

/** An event of a calendar file, or one occurrence of one that comes again. */
export interface CalendarEvent {
  readonly name: string;
  /** On the wall clock of the lab: milliseconds as if it were universal time. */
  readonly start: number;
  /** Behind the last moment; of whole days the midnight after the last. */
  readonly end: number;
  readonly isWholeDay: boolean;
}

/** A text that is no calendar. */
export class CalendarFileError extends Error {}

/** More occurrences of one event are not unrolled: then something in the file is not meant. */
const MOST_OCCURRENCES = 20_000;

/**
 * The events of a calendar file, those that come again unrolled with their exceptions and additions, in order of time.
 * Times with a zone are told by the clock of the lab; times without one are on its clock already.
 * Source: RFC 5545, Internet Calendaring and Scheduling Core Object Specification, sections 3.3.10 and 3.8.5.
 *
 * @param zone of the lab; null: it has none, and every time counts as it is written
 * @param from first moment that is of interest, on the wall clock, and the moment behind the last
 * @throws CalendarFileError when the text is no calendar, or holds an event that cannot be read
 */
export function calendarEvents(text: string, zone: string | null, from: number, to: number): CalendarEvent[] {
  const component = calendarOf(text);
  const parts = component.getAllSubcomponents('vevent');
  const isException = (part: ICAL.Component): boolean => part.hasProperty('recurrence-id');
  const uidOf = (part: ICAL.Component): string => String(part.getFirstPropertyValue('uid') ?? '');
  const mains = new Set(parts.filter((part) => !isException(part)).map(uidOf));
  const found: CalendarEvent[] = [];
  for (const part of parts) {
    // An exception whose series is not in the file is an event by itself.
    if (isException(part) && mains.has(uidOf(part))) continue;
    const exceptions = parts.filter((other) => isException(other) && uidOf(other) === uidOf(part));
    const event = new ICAL.Event(part, {
      strictExceptions: true,
      exceptions: isException(part) ? [] : exceptions,
    });
    if (!isCancelled(event)) found.push(...occurrencesOf(event, zone, to));
  }
  return found.filter(({ start, end }) => end > from && start < to).sort((a, b) => a.start - b.start);
}

function calendarOf(text: string): ICAL.Component {
  try {
    const component = new ICAL.Component(ICAL.parse(text) as ConstructorParameters<typeof ICAL.Component>[0]);
    if (component.name === 'vcalendar') return component;
  } catch (error) {
    throw new CalendarFileError(error instanceof Error ? error.message : String(error));
  }
  throw new CalendarFileError('It does not begin with BEGIN:VCALENDAR.');
}

function occurrencesOf(event: ICAL.Event, zone: string | null, to: number): CalendarEvent[] {
  try {
    if (!event.isRecurring()) return [eventOf(event, event.startDate, event.endDate, zone)];
    const found: CalendarEvent[] = [];
    const iterator = event.iterator();
    let count = 0;
    for (let next = iterator.next(); next; next = iterator.next()) {
      if (count++ > MOST_OCCURRENCES) throw new Error(`it comes again more than ${MOST_OCCURRENCES} times.`);
      const { item, startDate, endDate } = event.getOccurrenceDetails(next);
      if (civilTime(event, next, zone) >= to) break;
      if (!isCancelled(item)) found.push(eventOf(item, startDate, endDate, zone));
    }
    return found;
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    throw new CalendarFileError(`The event "${event.summary ?? ''}" cannot be read: ${reason}`);
  }
}

function eventOf(event: ICAL.Event, start: ICAL.Time, end: ICAL.Time, zone: string | null): CalendarEvent {
  return {
    name: event.summary ?? '',
    start: civilTime(event, start, zone),
    end: civilTime(event, end, zone),
    isWholeDay: start.isDate,
  };
}

function isCancelled(event: ICAL.Event): boolean {
  return String(event.component.getFirstPropertyValue('status') ?? '').toUpperCase() === 'CANCELLED';
}

/** A time of the file on the wall clock of the lab. */
function civilTime(event: ICAL.Event, time: ICAL.Time, zone: string | null): number {
  const written = Date.UTC(time.year, time.month - 1, time.day, time.hour, time.minute, time.second);
  if (time.isDate || zone === null || !isZone(zone)) return written;
  if (time.zone === ICAL.Timezone.utcTimezone) return wallClockOf(zone, written);
  const named = event.component.getFirstProperty('dtstart')?.getParameter('tzid');
  const own = typeof named === 'string' ? named : null;
  if (own === null || own === zone) return written;
  // The name of a zone says more than its rules in the file, which may be old.
  if (isZone(own)) return wallClockOf(zone, instantOf(own, written));
  const isKnown = time.zone !== ICAL.Timezone.localTimezone;
  return isKnown ? wallClockOf(zone, time.toUnixTime() * 1000) : written;
}
