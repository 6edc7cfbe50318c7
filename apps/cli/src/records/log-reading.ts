import { basename } from 'node:path';
import { formatCount } from '@buildweek/charts';
import type { ColumnPlace, DateOrder, RowCounts, StagePlaces } from '@buildweek/records';
import type { LogReading, ReadTable } from '@buildweek/results';
import type { ReadLog } from './read-log.ts';
import type { TableFile } from './table-file.ts';
import { TROUBLE_WORDS } from './trouble-words.ts';

/** So many people are named, when names are kept. */
const MOST_REQUESTERS = 10;
const WEEK = 7 * 86_400_000;
const SEPARATOR_NAMES = { ',': 'commas', ';': 'semicolons', '\t': 'tabs', '|': 'strokes' } as const;
const ENCODING_NAMES = {
  'utf-8': 'UTF-8',
  'utf-16le': 'UTF-16',
  'utf-16be': 'UTF-16',
  'windows-1252': 'Windows-1252',
} as const;
const HOW = {
  mapping: 'the mapping says so',
  heading: 'by its heading',
  content: 'by what is in it',
} as const;

/** What was read of a log, and what it was taken for, in words. */
export function logReading(log: ReadLog): LogReading {
  const { requests, machines } = log;
  return {
    from: new Date(log.from).toISOString().slice(0, 10),
    until: new Date(log.until).toISOString().slice(0, 16),
    weeks: (log.until - log.from) / WEEK,
    zone: log.zone,
    requests: {
      ...tableOf(requests.table, requests.order, requests.read.counted, requests.plan),
      columns: [...columnsOf(requests.plan.places), ...stagesOf(requests.plan.stages)],
      notes: [
        ...requesterNotes(log),
        ...nameNotes(requests.read.names),
        ...priorityNotes(requests.read.priorities),
      ],
    },
    machines:
      machines === null
        ? null
        : {
            ...tableOf(machines.table, machines.order, machines.read.counted, machines.plan),
            columns: columnsOf(machines.plan.places),
            notes: [],
          },
  };
}

function tableOf(
  table: TableFile,
  order: DateOrder | null,
  { read, kept, troubles }: RowCounts,
  { unused }: { readonly unused: readonly string[] },
): Omit<ReadTable, 'columns' | 'notes'> {
  const dates = order === null ? 'dates begin with the year' : `dates have the ${order}`;
  return {
    file: basename(table.path),
    rows: read,
    kept,
    writing: `${ENCODING_NAMES[table.encoding]}, ${SEPARATOR_NAMES[table.separator]} between cells; ${dates}.`,
    unused: [...unused],
    troubles: troubles.map(({ trouble, count, rows }) => ({
      trouble: TROUBLE_WORDS[trouble].what,
      done: TROUBLE_WORDS[trouble].done,
      count,
      rows: [...rows],
    })),
  };
}

function columnsOf(places: Readonly<Record<string, ColumnPlace | undefined>>): ReadTable['columns'] {
  return Object.entries(places).flatMap(([what, place]) =>
    place === undefined ? [] : [{ what, headings: [place.heading], how: HOW[place.by] }],
  );
}

function stagesOf(stages: readonly StagePlaces[]): ReadTable['columns'] {
  return stages.map(({ name, start, end, isWork }) => ({
    what: `stage “${name}”`,
    headings: [start, end].flatMap((place) => (place === null ? [] : [place.heading])),
    how: isWork ? 'start and end of the work' : 'clicks, with waiting in between: no work is fitted to them',
  }));
}

function requesterNotes({ requests, jobs }: ReadLog): string[] {
  const { requester } = requests.plan.places;
  if (requester === undefined) return [];
  const counts = new Map<string, number>();
  for (const { requester: name } of jobs) if (name !== null) counts.set(name, (counts.get(name) ?? 0) + 1);
  if (counts.size === 0) {
    return [
      `Names of requesters (column “${requester.heading}”) go nowhere: no scenario, result or page has them. --keep-requesters keeps them.`,
    ];
  }
  const most = [...counts]
    .sort((a, b) => b[1] - a[1])
    .slice(0, MOST_REQUESTERS)
    .map(([name, count]) => `${name} (${count})`)
    .join(', ');
  return [
    `Names of requesters (column “${requester.heading}”) are kept, as asked for; ${counts.size} people asked, most often ${most}.`,
  ];
}

function nameNotes({ respelled, grouped }: ReadLog['requests']['read']['names']): string[] {
  return [
    ...respelled.map(
      ({ name, spellings }) =>
        `“${name}” is also written ${spellings.map((other) => `“${other}”`).join(', ')}.`,
    ),
    ...grouped.map(
      ({ name, names, jobs }) =>
        `${formatCount(names)} names with few jobs each are put together as “${name}” (${formatCount(jobs)} jobs).`,
    ),
  ];
}

function priorityNotes(priorities: ReadLog['requests']['read']['priorities']): string[] {
  const named = priorities.filter(({ word }) => word !== '');
  if (named.length === 0) return [];
  const wordsOf = (isRush: boolean): string =>
    named
      .filter((one) => one.isRush === isRush)
      .slice(0, 8)
      .map(({ word }) => `“${word}”`)
      .join(', ');
  const rush = wordsOf(true);
  return [
    rush === ''
      ? `No word of the priority is known to mean rush: ${wordsOf(false)}. Say which does under "rush means" in a mapping file.`
      : `Rush is ${rush}; not ${wordsOf(false) || 'anything else'}.`,
  ];
}
