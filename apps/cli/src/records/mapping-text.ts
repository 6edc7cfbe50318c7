import type { ColumnPlace, DateOrder, StagePlaces } from '@buildweek/records';
import type { ReadLog } from './read-log.ts';

const SEPARATOR_WORDS = { ',': 'comma', ';': 'semicolon', '\t': 'tab', '|': 'stroke' } as const;

/** A mapping file that says what was guessed, ready to be corrected. */
export function mappingText(log: ReadLog): string {
  const { requests, machines, zone } = log;
  const { plan, read, table, order } = requests;
  const rush = read.priorities.filter(({ isRush }) => isRush).map(({ word }) => quoted(word));
  const lines = [
    '# buildweek mapping: how a log is read. Correct what is wrong; what is left out is guessed again.',
    `separator: ${SEPARATOR_WORDS[table.separator]}`,
    orderLine(order),
    zone === null ? '# zone: Europe/Lisbon # of the wall clock of the lab' : `zone: ${zone}`,
    'columns: # what: heading; "none" when there is no such column',
    ...columnLines(plan.places, '  '),
    ...unusedLines(plan.unused),
    ...stageLines(plan.stages),
    rush.length === 0 ? '# rush means: [high, urgent]' : `rush means: [${rush.join(', ')}]`,
    '# cancelled means: [withdrawn]',
    ...partLines(read.names),
  ];
  if (machines !== null) {
    lines.push(
      'machines:',
      `  separator: ${SEPARATOR_WORDS[machines.table.separator]}`,
      `  ${orderLine(machines.order)}`,
      '  columns:',
      ...columnLines(machines.plan.places, '    '),
      '  # failed means: [aborted]',
      '  # broke down means: [fault]',
    );
  }
  return `${lines.join('\n')}\n`;
}

/** Dates that begin with the year need no order. */
function orderLine(order: DateOrder | null): string {
  return order === null ? '# dates: day first # or month first' : `dates: ${order}`;
}

function columnLines(places: Readonly<Record<string, ColumnPlace | undefined>>, indent: string): string[] {
  return Object.entries(places).flatMap(([column, place]) =>
    place === undefined ? [] : [`${indent}${column}: ${quoted(place.heading)}`],
  );
}

function unusedLines(unused: readonly string[]): string[] {
  return unused.length === 0 ? [] : [`  # not used: ${unused.map(quoted).join(', ')}`];
}

function stageLines(stages: readonly StagePlaces[]): string[] {
  if (stages.length === 0) return [];
  return [
    'stages: # "is work: yes" only where start and end are those of the work itself',
    ...stages.map(({ name, start, end, isWork }) => {
      const ends = [
        ...(start === null ? [] : [`start: ${quoted(start.heading)}`]),
        ...(end === null ? [] : [`end: ${quoted(end.heading)}`]),
        `is work: ${isWork ? 'yes' : 'no'}`,
      ];
      return `  ${quoted(name)}: { ${ends.join(', ')} }`;
    }),
  ];
}

function partLines({ respelled }: ReadLog['requests']['read']['names']): string[] {
  if (respelled.length === 0)
    return ['# parts: { "Geh. A": housing } # spellings, and the names that they get'];
  return [
    'parts: # spellings, and the names that they get',
    ...respelled.flatMap(({ name, spellings }) =>
      spellings.map((spelling) => `  ${quoted(spelling)}: ${quoted(name)}`),
    ),
  ];
}

/** Any text as YAML: a string of JSON is one. */
function quoted(text: string): string {
  return /^\p{L}[\p{L}\p{N} ]*$/u.test(text) && !/^(yes|no|true|false|null|none|y|n|on|off)$/i.test(text)
    ? text
    : JSON.stringify(text);
}
