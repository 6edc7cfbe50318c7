import type { HourSpan } from '@buildweek/model';

/** Weeks that are written out to see windows that reach over the end of a week. */
const WEEKS = 3;

/**
 * Windows written out over a few weeks, with what overlaps or touches put together.
 *
 * @param single windows on single dates, hours since the start of the plan
 * @param weekly hours since Monday 00:00
 * @returns ascending, hours since the start of the plan
 */
export function openWindows(single: readonly HourSpan[], weekly: readonly HourSpan[]): HourSpan[] {
  const spans = [...single];
  for (let week = 0; week < WEEKS; week++) {
    for (const span of weekly) {
      spans.push({ fromHour: week * 168 + span.fromHour, toHour: week * 168 + span.toHour });
    }
  }
  spans.sort((a, b) => a.fromHour - b.fromHour);
  const merged: { fromHour: number; toHour: number }[] = [];
  for (const span of spans) {
    const last = merged.at(-1);
    if (last !== undefined && span.fromHour <= last.toHour) last.toHour = Math.max(last.toHour, span.toHour);
    else merged.push({ ...span });
  }
  return merged;
}
