import { formatLevel } from '@buildweek/charts';
import type { AwayAnswer, AwayGroup } from '@buildweek/results';
import { section } from '../terminal/section.ts';
import type { Style } from '../terminal/style.ts';
import { numbers, tableText, words } from '../terminal/table.ts';
import { Footnotes } from './footnotes.ts';
import { estimateText, questionText, withNotes } from './question-text.ts';

const PERCENT = { size: 0.01, leastDecimals: 0, isMoney: false };
const PLAIN = { size: 1, leastDecimals: 1, isMoney: false };
const SPANS = ['before', 'during', 'after'] as const;

/** What an absence does, on one screen. */
export function awayText(answer: AwayAnswer, style: Style): string {
  const { fromWeek, awayWeeks, differencesLevel, normalBand } = answer;
  const last = fromWeek + awayWeeks - 1;
  const promises = promisesTable(answer, style);
  return questionText(
    answer.verdict,
    [
      section('The way back', recoveryTable(answer, style), style),
      ...(promises === '' ? [] : [section('On time, %, by the weeks in which jobs come', promises, style)]),
    ],
    `Away in week ${fromWeek}${last === fromWeek ? '' : ` to ${last}`}. Jobs that come before may still be in the lab when it begins. Back to normal: ${normalBand}. Differences have intervals of ${formatLevel(differencesLevel)} each.`,
    answer,
    style,
  );
}

function recoveryTable({ groups, run, fromWeek, awayWeeks }: AwayAnswer, style: Style): string {
  const footnotes = new Footnotes();
  const after = run.weeks - fromWeek + 1 - awayWeeks;
  const table = tableText(
    [
      words('one away of'),
      numbers('people'),
      numbers('weeks to recover'),
      numbers('more jobs in the lab, worst week'),
    ],
    groups.map((group) => ({
      cells: [
        group.group,
        String(group.count),
        recoveryWords(group, after),
        estimateText(group.mostExtraJobs, PLAIN, footnotes),
      ],
    })),
    style,
  );
  return withNotes(table, footnotes);
}

function recoveryWords({ recovery: { weeks, low, high } }: AwayGroup, after: number): string {
  if (weeks === null) return `more than ${after}`;
  return `${weeks} (${low ?? 0} to ${high ?? `more than ${after}`})`;
}

function promisesTable({ groups }: AwayAnswer, style: Style): string {
  const footnotes = new Footnotes();
  const rows = groups.flatMap(({ group, onTime }) =>
    onTime === null
      ? []
      : SPANS.map((span) => ({
          cells: [
            group,
            span,
            estimateText(onTime[span].there, PERCENT, footnotes),
            estimateText(onTime[span].away, PERCENT, footnotes),
            estimateText(onTime[span].difference, PERCENT, footnotes),
          ],
        })),
  );
  if (rows.length === 0) return '';
  const table = tableText(
    [
      words('one away of'),
      words('jobs that come'),
      numbers('everybody there'),
      numbers('one away'),
      numbers('difference, points'),
    ],
    rows,
    style,
  );
  return withNotes(table, footnotes);
}
