import { createHash } from 'node:crypto';
import type { Moment, OpenJob, PlannedStart, PromiseAnswer, PromisedRequest } from '@buildweek/results';
import { isNumbered } from '@buildweek/study';
import ICAL from 'ical.js';

/** Chance of the dates that go into a calendar. */
const CHANCE = 0.8;

/** What is entered into a calendar. */
interface Entry {
  /** What the entry is about; the same from day to day, so that a new file replaces what the old one entered. */
  readonly key: readonly string[];
  readonly from: string;
  readonly to: string;
  readonly summary: string;
  readonly description: string;
}

/**
 * Promised dates and builds to start as a calendar of RFC 5545. Every job has one entry, at the time by which it is
 * ready with 80 %; every build one, from when it is usually started to when it is to be started by.
 *
 * @param zone of the lab, by which its clock is turned into universal time; null: times are those of whoever looks
 * @returns the same text for the same answer
 */
export function promiseCalendar(answer: PromiseAnswer, zone: string | null): string {
  const calendar = new ICAL.Component('vcalendar');
  calendar.updatePropertyWithValue('version', '2.0');
  calendar.updatePropertyWithValue('prodid', '-//buildweek//promise//EN');
  calendar.updatePropertyWithValue('calscale', 'GREGORIAN');
  const stamp = timeOf(answer.now, zone ?? 'UTC');
  const alike = new Map<string, number>();
  for (const entry of entriesOf(answer)) {
    const key = JSON.stringify(entry.key);
    const before = alike.get(key) ?? 0;
    alike.set(key, before + 1);
    const event = new ICAL.Component('vevent');
    event.updatePropertyWithValue(
      'uid',
      uidOf(answer, [...entry.key, ...(before === 0 ? [] : [String(before)])]),
    );
    event.updatePropertyWithValue('dtstamp', stamp);
    event.updatePropertyWithValue('dtstart', timeOf(entry.from, zone));
    if (entry.to > entry.from) event.updatePropertyWithValue('dtend', timeOf(entry.to, zone));
    event.updatePropertyWithValue('summary', oneLine(entry.summary));
    event.updatePropertyWithValue('description', oneLine(entry.description));
    event.updatePropertyWithValue('transp', 'TRANSPARENT');
    calendar.addSubcomponent(event);
  }
  return `${calendar.toString()}\r\n`;
}

function entriesOf({ request, openJobs, day }: PromiseAnswer): Entry[] {
  return [
    ...(request === null ? [] : requestEntry(request)),
    ...(openJobs ?? []).flatMap(jobEntry),
    ...(day?.starts ?? []).map(startEntry),
  ];
}

function requestEntry({ request, ways, chosen }: PromisedRequest): Entry[] {
  const date = ways
    .find(({ route }) => route === chosen)
    ?.dates.find(({ probability }) => probability === CHANCE);
  if (date?.promise == null) return [];
  return [
    {
      key: ['request', request.part, String(request.quantity), request.finish, String(request.rush)],
      from: date.promise.at,
      to: date.promise.at,
      summary: `Promise: ${request.quantity} × ${request.part}`,
      description: `By ${chosen}, with 80 %.`,
    },
  ];
}

function jobEntry(job: OpenJob): Entry[] {
  const ready: Moment | null = job.dates.find(({ probability }) => probability === CHANCE)?.ready ?? null;
  if (ready === null) return [];
  const kept =
    job.onTime?.kind === 'estimate' && job.due !== null
      ? ` Due ${job.due.at}, kept in ${Math.round(100 * job.onTime.value)} % of the plays.`
      : '';
  return [
    {
      key: keyOf(job),
      from: ready.at,
      to: ready.at,
      summary: `Ready: ${job.job}, ${job.quantity} × ${job.part}`,
      description: [`With 80 % by then.${kept}`, ...job.risk, ...job.moved].join(' '),
    },
  ];
}

/** A name where there is one; numbers are others from day to day. */
function keyOf({ job, demand, quantity, arrived, rush }: OpenJob): string[] {
  return isNumbered(job) ? ['job', demand, String(quantity), arrived, String(rush)] : ['job', job];
}

function startEntry({ machine, jobs, start, startBy, by, share }: PlannedStart): Entry {
  const names = jobs.map(({ job, part, pieces }) => `${job} (${pieces} × ${part})`).join(', ');
  return {
    key: ['start', machine, start.at.slice(0, 10), ...jobs.map(({ job }) => job)],
    from: start.at,
    to: startBy.at,
    summary: `Start ${machine}: ${names}`,
    description: `${by.length === 0 ? 'It starts by itself.' : `By ${by.join(' and ')}.`} So in ${Math.round(100 * share)} % of the plays.`,
  };
}

function uidOf({ scenario }: PromiseAnswer, key: readonly string[]): string {
  return `${createHash('sha256')
    .update(JSON.stringify([scenario.name, ...key]))
    .digest('hex')
    .slice(0, 32)}@buildweek`;
}

/** Names are data: a line of a calendar has no line ends in it. */
function oneLine(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
  return text.replace(/[\u0000-\u001f\u007f]+/g, ' ');
}

/** @param civil `2027-03-01 09:30` on the wall of the lab */
function timeOf(civil: string, zone: string | null): ICAL.Time {
  const wall = Date.parse(`${civil.replace(' ', 'T')}Z`);
  if (zone === null) return ICAL.Time.fromDateTimeString(isoOf(wall));
  // Twice, since the offset is known for instants and the time is given on the wall clock.
  const guess = wall - offsetAt(zone, wall);
  return ICAL.Time.fromDateTimeString(`${isoOf(wall - offsetAt(zone, guess))}Z`);
}

function isoOf(milliseconds: number): string {
  return new Date(milliseconds).toISOString().slice(0, 19);
}

/** Milliseconds by which the wall clock of a zone is ahead of universal time. */
function offsetAt(zone: string, instant: number): number {
  const parts = new Intl.DateTimeFormat('en-GB', {
    timeZone: zone,
    hourCycle: 'h23',
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
  }).formatToParts(instant);
  const part = (type: string): number => Number(parts.find((one) => one.type === type)?.value);
  const wall = Date.UTC(part('year'), part('month') - 1, part('day'), part('hour'), part('minute'));
  const minute = Math.floor(instant / 60_000) * 60_000;
  return wall - minute;
}
