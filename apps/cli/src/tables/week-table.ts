import { stepWords, type WeekItem, type WeekListing } from '@buildweek/study';
import { section } from '../terminal/section.ts';
import type { Style } from '../terminal/style.ts';
import { numbers, type Row, tableText, words } from '../terminal/table.ts';
import type { StoryClock } from './story-clock.ts';
import { jobNumber } from './story-words.ts';

/** So many jobs are named in a line; of the others only their number is told. */
const MOST_JOBS = 6;
const SINCE_BEFORE = 'Going on since before';

const COLUMNS = [
  words('from'),
  words('to'),
  words('machine or station'),
  words('people'),
  words('what'),
  words('jobs'),
  numbers('pieces'),
];

/** What every machine and person did in one week, in order of time, day by day. */
export function weekText(listing: WeekListing, clock: StoryClock, style: Style): string {
  const days = new Map<string, WeekItem[]>();
  for (const item of listing.items) {
    const day = item.from < listing.from ? SINCE_BEFORE : clock.day(item.from);
    days.set(day, [...(days.get(day) ?? []), item]);
  }
  if (days.size === 0) return '  Nothing happened in this week.';
  return [...days]
    .map(([day, items]) => {
      const rows = items.map((item) => rowOf(item, clock, day === SINCE_BEFORE));
      return section(day, tableText(COLUMNS, rows, style), style);
    })
    .join('\n\n');
}

function rowOf(item: WeekItem, clock: StoryClock, isBefore: boolean): Row {
  const { from, to, kind, unit, persons, jobs, pieces } = item;
  return {
    cells: [
      isBefore ? clock.moment(from) : clock.timeOfDay(from),
      kind === 'event' ? '' : to === null ? 'not ended' : clock.until(to, from),
      unit ?? '',
      persons.join(', '),
      weekItemWords(item),
      jobsOf(jobs),
      pieces === 0 ? '' : String(pieces),
    ],
  };
}

/** What somebody does, or what happens. */
function weekItemWords(item: WeekItem): string {
  const { kind, what, end, stage, parts } = item;
  switch (kind) {
    case 'event':
      return `${EVENTS[what] ?? what}: ${parts.join(', ')}${stage === '' ? '' : `, at ${stage}`}`;
    case 'down':
      return `broken down: ${what}`;
    case 'on duty':
    case 'other duties':
      return kind;
    case 'upkeep':
    case 'chore':
      return what + endOf(end);
    case 'step':
      return stepWords(item) + endOf(end);
  }
}

function endOf(end: WeekItem['end']): string {
  return end === 'ends' || end === 'goes on' ? '' : `, ${end}`;
}

const EVENTS: Readonly<Record<string, string>> = {
  'job arrives': 'job arrives',
  'job ends': 'job is finished',
  'job is cancelled': 'job is withdrawn',
  'job is revised': 'job starts again with a changed file',
  'parts are rejected': 'parts found bad',
};

function jobsOf(jobs: readonly number[]): string {
  const named = jobs.slice(0, MOST_JOBS).map(jobNumber).join(', ');
  return jobs.length <= MOST_JOBS ? named : `${named} and ${jobs.length - MOST_JOBS} more`;
}
