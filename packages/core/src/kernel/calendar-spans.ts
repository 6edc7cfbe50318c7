import type { HourSpan, WorkingCalendar } from '@buildweek/model';
import { HOURS_PER_WEEK, MILLISECONDS_PER_DAY, MILLISECONDS_PER_WEEK, toMilliseconds } from './clock.ts';

/** One window of a calendar as it was written, in whole milliseconds of local time since the start of the plan. */
export interface CalendarSpan {
  readonly from: number;
  readonly to: number;
}

/**
 * The windows of a calendar written out week after week, in local time, neither merged nor clipped: those of
 * the week before the plan are there too, because a shift that began on Sunday night goes on into it. Windows
 * that start on a closed day are left out, extra windows are added whatever the day.
 *
 * @param calendar the calendar
 * @param weeks how many weeks of the plan are written out
 * @returns spans of positive length, ascending by their start
 */
export function spansOf(calendar: WorkingCalendar, weeks: number): CalendarSpan[] {
  const closed = new Set(calendar.closedDays);
  const spans: CalendarSpan[] = [];
  for (let week = -1; week < weeks; week++) {
    for (const span of calendar.weekly) {
      const { from, to } = inMilliseconds(span);
      const start = week * MILLISECONDS_PER_WEEK + from;
      if (closed.has(Math.floor(start / MILLISECONDS_PER_DAY))) continue;
      spans.push({ from: start, to: week * MILLISECONDS_PER_WEEK + to });
    }
  }
  for (const span of calendar.extra) spans.push(inMilliseconds(span));
  return spans.filter((span) => span.to > span.from).sort((a, b) => a.from - b.from || a.to - b.to);
}

/** Whether the weekly windows leave no moment of a week open to chance: somebody is there day and night. */
export function coversWholeWeek(calendar: WorkingCalendar): boolean {
  // Spans of the week before reach into this one, as in `spansOf`.
  const spans = [...calendar.weekly, ...calendar.weekly.map(weekEarlier)].sort(
    (a, b) => a.fromHour - b.fromHour,
  );
  let covered = 0;
  for (const span of spans) {
    if (span.fromHour > covered) return false;
    covered = Math.max(covered, span.toHour);
  }
  return covered >= HOURS_PER_WEEK;
}

function weekEarlier(span: HourSpan): HourSpan {
  return { fromHour: span.fromHour - HOURS_PER_WEEK, toHour: span.toHour - HOURS_PER_WEEK };
}

function inMilliseconds(span: HourSpan): CalendarSpan {
  return { from: toMilliseconds(span.fromHour), to: toMilliseconds(span.toHour) };
}
