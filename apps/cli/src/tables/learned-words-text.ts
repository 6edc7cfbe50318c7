import type { LearnedWords, Sourced } from '@buildweek/records';
import type { LogFacts } from '../records/log-facts.ts';
import { paragraph } from '../terminal/paragraph.ts';
import { listSection, section } from '../terminal/section.ts';
import type { Style } from '../terminal/style.ts';
import { tableText, words } from '../terminal/table.ts';

/** What was learned from a log, in the words in which it stands in the scenario. */
export function learnedWordsText(
  { learned, hours }: LogFacts,
  left: readonly string[],
  style: Style,
): string {
  const rows = [
    ...named(learned.jobs, 'jobs'),
    ...all(learned.when, 'asked for'),
    ...all(learned.growth, 'growth'),
    ...all(learned.weekVariation, 'weeks differ by'),
    ...named(learned.rush, 'rush'),
    ...named(learned.fails, 'failed builds'),
    ...named(learned.breakdowns, 'breakdowns'),
    ...named(learned.prints, 'print'),
    ...[...learned.stages].flatMap(([part, stages]) =>
      [...stages].map(([stage, choice]) => row(part, stage, choice)),
    ),
  ];
  const told =
    hours === null
      ? []
      : [
          paragraph(
            `Somebody is in from ${hours.fromHour}:00 to ${hours.toHour}:00, as ${hours.counted} finishes and beginnings of work tell.`,
            '  ',
          ),
        ];
  const table = tableText([words('of'), words('what'), words('learned'), words('from')], rows, style);
  return [
    section('Learned from the log', [table, ...told].join('\n'), style),
    listSection('Not taken over', left, style),
  ]
    .filter((text) => text !== '')
    .join('\n\n');
}

function named(values: LearnedWords['jobs'], what: string): { cells: string[] }[] {
  return [...values].map(([name, value]) => row(name, what, value));
}

function all(value: Sourced | null, what: string): { cells: string[] }[] {
  return value === null ? [] : [row('all parts', what, value)];
}

function row(name: string, what: string, { value, source }: Sourced): { cells: string[] } {
  return { cells: [name, what, value, source] };
}
