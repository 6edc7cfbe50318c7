import { formatCount } from '@buildweek/charts';
import type { ColumnPlace, RowCounts, StagePlaces } from '@buildweek/records';
import { formatNumber } from '@buildweek/results';
import type { ReadLog } from '../records/read-log.ts';
import { TROUBLE_WORDS } from '../records/trouble-words.ts';
import { paragraph } from '../terminal/paragraph.ts';
import { section } from '../terminal/section.ts';
import { harmless, type Style } from '../terminal/style.ts';
import { numbers, tableText, words } from '../terminal/table.ts';

const WEEK = 7 * 86_400_000;
/** Row numbers that are shown of each trouble. */
const MOST_ROWS = 6;
const SEPARATOR_NAMES = { ',': 'commas', ';': 'semicolons', '\t': 'tabs', '|': 'strokes' } as const;
const ENCODING_NAMES = {
  'utf-8': 'UTF-8',
  'utf-16le': 'UTF-16',
  'utf-16be': 'UTF-16',
  'windows-1252': 'Windows-1252',
} as const;

/** What was read of a log, and what it was taken for. */
export function logText(log: ReadLog, style: Style): string {
  const { requests, machines, zone, runs } = log;
  const { counted, names, priorities } = requests.read;
  const weeks = (log.until - log.from) / WEEK;
  const sections = [
    style.heading(
      harmless(
        `${requests.table.path}: ${formatCount(counted.kept)} jobs of ${formatCount(counted.read)} rows, ${dateOf(log.from)} to ${dateOf(log.until)} (${formatNumber(weeks, 0)} weeks)`,
      ),
    ),
    [
      paragraph(writingWords(requests.table, requests.order), '  '),
      paragraph(
        zone === null
          ? 'Times are those on the wall clock of the lab, as they are written; --zone says which zone it is in.'
          : `Times are those on the wall clock in ${zone}.`,
        '  ',
      ),
      ...requesterWords(log),
    ].join('\n'),
    section('Columns', columnTable(requests.plan.places, requests.plan.stages, style), style),
    unusedWords(requests.plan.unused),
    namesWords(names),
    priorityWords(priorities),
    troubleSection('Rows that needed care', counted, style),
  ];
  if (machines !== null) {
    sections.push(
      style.heading(
        harmless(
          `${machines.table.path}: ${formatCount(runs.length)} runs of ${formatCount(machines.read.counted.read)} rows`,
        ),
      ),
      paragraph(writingWords(machines.table, machines.order), '  '),
      section('Columns', columnTable(machines.plan.places, [], style), style),
      unusedWords(machines.plan.unused),
      troubleSection('Rows that needed care', machines.read.counted, style),
    );
  }
  return `${sections.filter((text) => text !== '').join('\n\n')}\n`;
}

function writingWords(table: ReadLog['requests']['table'], order: string): string {
  return `${ENCODING_NAMES[table.encoding]}, ${SEPARATOR_NAMES[table.separator]} between cells; dates that do not begin with the year have the ${order}.`;
}

function requesterWords({ requests, jobs }: ReadLog): string[] {
  const { requester } = requests.plan.places;
  if (requester === undefined) return [];
  const isKept = jobs.some((job) => job.requester !== null);
  return [
    paragraph(
      isKept
        ? `Names of requesters (column “${requester.heading}”) are kept, as asked for.`
        : `Names of requesters (column “${requester.heading}”) go nowhere: no scenario, result or page has them. --keep-requesters keeps them.`,
      '  ',
    ),
  ];
}

const HOW = {
  mapping: 'the mapping says so',
  heading: 'by its heading',
  content: 'by what is in it',
} as const;

function columnTable(
  places: Readonly<Record<string, ColumnPlace | undefined>>,
  stages: readonly StagePlaces[],
  style: Style,
): string {
  const rows = Object.entries(places).map(([column, place]) => ({
    cells: [column, `“${place?.heading ?? ''}”`, place === undefined ? '' : HOW[place.by]],
  }));
  const stageRows = stages.map(({ name, start, end, isWork }) => ({
    cells: [
      `stage “${name}”`,
      [start, end].flatMap((place) => (place === null ? [] : [`“${place.heading}”`])).join(' to '),
      isWork ? 'start and end of the work' : 'clicks, with waiting in between: no work is fitted to them',
    ],
  }));
  return tableText([words('what'), words('column'), words('how known')], [...rows, ...stageRows], style);
}

function unusedWords(unused: readonly string[]): string {
  if (unused.length === 0) return '';
  return paragraph(`Not used: ${unused.map((heading) => `“${heading}”`).join(', ')}.`, '  ');
}

function namesWords({ respelled, grouped }: ReadLog['requests']['read']['names']): string {
  return [
    ...respelled.map(
      ({ name, spellings }) =>
        `“${name}” is also written ${spellings.map((other) => `“${other}”`).join(', ')}.`,
    ),
    ...grouped.map(
      ({ name, names, jobs }) =>
        `${formatCount(names)} names with few jobs each are put together as “${name}” (${formatCount(jobs)} jobs).`,
    ),
  ]
    .map((line) => paragraph(line, '  '))
    .join('\n');
}

function priorityWords(priorities: ReadLog['requests']['read']['priorities']): string {
  const named = priorities.filter(({ word }) => word !== '');
  if (named.length === 0) return '';
  const rush = named.filter(({ isRush }) => isRush).map(({ word }) => `“${word}”`);
  const others = named.filter(({ isRush }) => !isRush).map(({ word }) => `“${word}”`);
  return paragraph(
    rush.length === 0
      ? `No word of the priority is known to mean rush: ${others.slice(0, 8).join(', ')}. Say which does under "rush means" in a mapping file.`
      : `Rush is ${rush.join(', ')}; not ${others.length === 0 ? 'anything else' : others.slice(0, 8).join(', ')}.`,
    '  ',
  );
}

function troubleSection(title: string, { troubles }: RowCounts, style: Style): string {
  if (troubles.length === 0) return '';
  const table = tableText(
    [numbers('rows'), words('what'), words('what was done'), words('which')],
    troubles.map(({ trouble, count, rows }) => ({
      cells: [
        formatCount(count),
        TROUBLE_WORDS[trouble].what,
        TROUBLE_WORDS[trouble].done,
        `${rows.slice(0, MOST_ROWS).join(', ')}${count > MOST_ROWS ? ', …' : ''}`,
      ],
    })),
    style,
  );
  return section(title, table, style);
}

function dateOf(time: number): string {
  return new Date(time).toISOString().slice(0, 10);
}
