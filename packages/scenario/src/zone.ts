import type { ClockChange } from '@buildweek/model';

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
const YEARS = 10;
/** No zone changes its clock there and back within so few days. */
const STEP_DAYS = 7;

/** Whether the time zone database knows a zone by this name. */
export function isZone(name: string): boolean {
  try {
    return new Intl.DateTimeFormat('en-GB', { timeZone: name }) !== null;
  } catch {
    return false;
  }
}

/** Names of zones, for proposals. */
export function zoneNames(): string[] {
  return Intl.supportedValuesOf('timeZone');
}

/** What the clock on the wall of a zone shows at an instant: milliseconds as if it were universal time. */
export function wallClockOf(zone: string, instant: number): number {
  return instant + offsetReader(zone)(instant);
}

/** The instant at which the clock on the wall of a zone shows a time; in an hour that it skips, the one after. */
export function instantOf(zone: string, wallClock: number): number {
  const offsetAt = offsetReader(zone);
  // Twice, since the offset is known for instants and the time is given on the wall clock.
  const guess = wallClock - offsetAt(wallClock);
  return wallClock - offsetAt(guess);
}

/**
 * Changes of the clock in a zone within ten years from the start of the plan, midnight of the given day on the
 * wall clock.
 *
 * @param zone a name of the IANA time zone database
 * @param startDay days since 1970-01-01
 */
export function clockChanges(zone: string, startDay: number): ClockChange[] {
  const offsetAt = offsetReader(zone);
  const localStart = startDay * DAY;
  // Twice, since the offset is known for instants and the start is given on the wall clock.
  const guess = localStart - offsetAt(localStart);
  const start = localStart - offsetAt(guess);
  const startOffset = offsetAt(start);
  const changes: ClockChange[] = [];
  let before = startOffset;
  for (let day = STEP_DAYS; day <= YEARS * 366; day += STEP_DAYS) {
    const after = offsetAt(start + day * DAY);
    if (after === before) continue;
    const at = changeWithin(start + (day - STEP_DAYS) * DAY, start + day * DAY, before, offsetAt);
    changes.push({ atHours: (at - start) / HOUR, localMinusElapsedHours: (after - startOffset) / HOUR });
    before = after;
  }
  return changes;
}

/** First minute of a stretch of time at which the offset is no longer what it was. */
function changeWithin(
  from: number,
  to: number,
  offset: number,
  offsetAt: (instant: number) => number,
): number {
  const minute = 60_000;
  let low = 0;
  let high = (to - from) / minute;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (offsetAt(from + middle * minute) === offset) low = middle;
    else high = middle;
  }
  return from + high * minute;
}

/** Local time minus universal time, in milliseconds, at an instant. */
function offsetReader(zone: string): (instant: number) => number {
  const format = new Intl.DateTimeFormat('en-GB', {
    timeZone: zone,
    hourCycle: 'h23',
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
    second: 'numeric',
  });
  return (instant) => {
    const parts = new Map(format.formatToParts(instant).map((part) => [part.type, Number(part.value)]));
    const of = (type: Intl.DateTimeFormatPartTypes): number => parts.get(type) ?? 0;
    const local = Date.UTC(of('year'), of('month') - 1, of('day'), of('hour'), of('minute'), of('second'));
    return local - Math.floor(instant / 1000) * 1000;
  };
}
