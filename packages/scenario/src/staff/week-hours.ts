import type { HourSpan } from '@buildweek/model';
import { flowGroup } from '../change/flow-text.ts';
import type { ScenarioCalendar } from '../scenario.ts';
import { dateText } from '../words/dates.ts';
import { DAY_NAMES } from '../words/week.ts';

const HOURS_PER_DAY = 24;
const HOURS_PER_WEEK = 168;
/** A window that crosses midnight may not be written longer than this. */
const LONGEST_NIGHT_HOURS = 14;

/** Windows of a week, moved by so many hours; over the end of the week they go on at its beginning. */
export function moved(weekly: readonly HourSpan[], byHours: number): HourSpan[] {
  return weekly
    .map(({ fromHour, toHour }) => {
      const start = (((fromHour + byHours) % HOURS_PER_WEEK) + HOURS_PER_WEEK) % HOURS_PER_WEEK;
      return { fromHour: start, toHour: start + toHour - fromHour };
    })
    .sort((one, other) => one.fromHour - other.fromHour);
}

/** Hours on duty in an ordinary week. */
export function weeklyHours(weekly: readonly HourSpan[]): number {
  return weekly.reduce((sum, { fromHour, toHour }) => sum + toHour - fromHour, 0);
}

/** When days begin and end, in hours of the day: the earliest start and the latest end over the days of a week. */
export function dayOf(weekly: readonly HourSpan[]): HourSpan {
  const starts = weekly.map(({ fromHour }) => fromHour % HOURS_PER_DAY);
  const ends = weekly.map(({ fromHour, toHour }) => (fromHour % HOURS_PER_DAY) + toHour - fromHour);
  return { fromHour: Math.min(...starts), toHour: Math.max(...ends) };
}

/** The windows that start on a day; 0 is Monday. */
export function windowsOfDay(weekly: readonly HourSpan[], day: number): HourSpan[] {
  return weekly.filter(({ fromHour }) => Math.floor(fromHour / HOURS_PER_DAY) === day);
}

/** Windows without the last so many hours of a day. */
export function withoutEndOfDay(weekly: readonly HourSpan[], day: number, hours: number): HourSpan[] {
  let left = hours;
  const kept: HourSpan[] = [];
  for (const span of [...weekly].reverse()) {
    const taken =
      Math.floor(span.fromHour / HOURS_PER_DAY) === day ? Math.min(left, span.toHour - span.fromHour) : 0;
    left -= taken;
    if (span.toHour - taken > span.fromHour) kept.unshift({ ...span, toHour: span.toHour - taken });
  }
  return kept;
}

/** Whether windows can be written in a file, each on the day on which it starts. */
export function canBeWritten(weekly: readonly HourSpan[]): boolean {
  return (
    weekly.length > 0 &&
    weekly.every(({ fromHour, toHour }) => {
      const end = (fromHour % HOURS_PER_DAY) + toHour - fromHour;
      const isWhole = [fromHour, toHour].every((hour) => Math.abs(hour * 60 - Math.round(hour * 60)) < 1e-6);
      return isWhole && (end <= HOURS_PER_DAY || toHour - fromHour <= LONGEST_NIGHT_HOURS);
    })
  );
}

/** Hours as a group of a file, on one line: `{ mon-fri: 07:00-11:30 12:00-15:30 }`, with closed and extra days. */
export function hoursGroup(calendar: ScenarioCalendar): string {
  const closed: [string, string][] =
    calendar.closedDays.length === 0 ? [] : [['closed', `[${calendar.closedDays.map(dateText).join(', ')}]`]];
  const single = calendar.extra.map(({ day, span }) => `${dateText(day)} ${windowText(span)}`);
  const extra: [string, string][] = single.length === 0 ? [] : [['extra', `[${single.join(', ')}]`]];
  return flowGroup([...daysWithWindows(calendar.weekly), ...closed, ...extra]);
}

/** The same for a sentence: `mon-fri 07:00-11:30 12:00-15:30`. */
export function hoursWords(weekly: readonly HourSpan[]): string {
  return daysWithWindows(weekly)
    .map(([days, text]) => `${days} ${text}`)
    .join(', ');
}

/** Days that follow each other and have the same windows, with these. */
function daysWithWindows(weekly: readonly HourSpan[]): [days: string, windows: string][] {
  const runs: { first: number; last: number; text: string }[] = [];
  DAY_NAMES.forEach((_, day) => {
    const text = windowsOfDay(weekly, day).map(windowText).join(' ');
    const run = runs.at(-1);
    if (text === '') return;
    if (run !== undefined && run.last === day - 1 && run.text === text) run.last = day;
    else runs.push({ first: day, last: day, text });
  });
  const name = (day: number): string => DAY_NAMES[day] ?? '';
  return runs.map(({ first, last, text }) => [
    first === last ? name(first) : `${name(first)}-${name(last)}`,
    text,
  ]);
}

function windowText({ fromHour, toHour }: HourSpan): string {
  const start = fromHour % HOURS_PER_DAY;
  const end = start + toHour - fromHour;
  return `${clockText(start)}-${clockText(end > HOURS_PER_DAY ? end - HOURS_PER_DAY : end)}`;
}

/** `07:30`. */
export function clockText(hour: number): string {
  const minutes = Math.round(hour * 60);
  return `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;
}
