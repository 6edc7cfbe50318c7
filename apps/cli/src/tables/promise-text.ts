import { formatLevel, keptTogether } from '@buildweek/charts';
import {
  type EstimateOrRefused,
  type Moment,
  momentText,
  type PromiseAnswer,
  type PromisedDate,
  type PromisedRequest,
} from '@buildweek/results';
import { PROMISED } from '@buildweek/study';
import { paragraph } from '../terminal/paragraph.ts';
import { listSection, section } from '../terminal/section.ts';
import { harmless, type Style } from '../terminal/style.ts';
import { numbers, tableText, words } from '../terminal/table.ts';
import { Footnotes } from './footnotes.ts';
import { daySections, openJobsSections } from './open-jobs-table.ts';
import { estimateText, withNotes } from './question-text.ts';

const HOURS = { size: 1, leastDecimals: 1, isMoney: false };
const PERCENT = { size: 0.01, leastDecimals: 0, isMoney: false };
/** Jobs of the lab that the effect on is shown for; the document has all. */
const MOST_EFFECTS = 8;

/** Promised dates, on one screen. */
export function promiseText(answer: PromiseAnswer, style: Style): string {
  const { request, run, now, jobsInLab, cautions, assumptions, warnings } = answer;
  const topics = cautions.map(({ topic }) => topic).filter((topic) => topic !== 'What this is not');
  const state =
    jobsInLab === 0
      ? 'nothing in the lab'
      : `${jobsInLab === 1 ? 'one job' : `${jobsInLab} jobs`} in the lab`;
  const all = [
    answer.verdict.map((sentence) => paragraph(harmless(keptTogether(sentence)), '')).join('\n\n'),
    ...(answer.day === null ? [] : daySections(answer.day, style)),
    ...(answer.openJobs === null ? [] : openJobsSections(answer.openJobs, style)),
    ...(answer.pinned === null
      ? []
      : [
          section(
            'What the decided builds do to the jobs in the lab',
            effectsTable(answer.pinned, style),
            style,
          ),
        ]),
    ...(request === null ? [] : requestSections(request, style)),
    listSection('Taken for granted', assumptions, style),
    paragraph(
      `From ${momentText(now)} with ${state}, ${run.replications} plays of what is to come, everything on the same random numbers, seed “${run.seed}”. Intervals are of ${formatLevel(run.level)}.`,
      '',
    ),
    listSection('Warnings', warnings, style),
    topics.length === 0
      ? ''
      : paragraph(
          `Cautions: ${topics.join('; ')}. Go by the safety data sheets, the rules of the site, and the people licensed to judge them; this is no safety assessment.`,
          '',
        ),
  ];
  return `${all.filter((text) => text !== '').join('\n\n')}\n`;
}

function requestSections(found: PromisedRequest, style: Style): string[] {
  return [
    section('Ready by, and the closing time to promise', waysTable(found, style), style),
    found.moves.length === 0
      ? ''
      : section(`What moves it, by ${found.chosen}`, movesTable(found, style), style),
    found.effects.length === 0
      ? ''
      : section('What taking it on does to the jobs in the lab', effectsTable(found, style), style),
    listSection(
      'Not possible',
      found.impossible.map(({ way, reason }) => `${way}: ${reason}`),
      style,
    ),
    listSection('Measured', found.request.notes, style),
  ];
}

const DATE_COLUMNS = PROMISED.map((probability) => numbers(`${Math.round(probability * 100)} %`));

function waysTable({ ways }: PromisedRequest, style: Style): string {
  const footnotes = new Footnotes();
  const table = tableText(
    [words('by'), words(''), ...DATE_COLUMNS],
    ways.flatMap(({ route, process, dates }) => {
      const name =
        route === null
          ? 'sent out'
          : process === 'other' || process === null
            ? route
            : `${route} (${process})`;
      return [
        { cells: [name, 'ready', ...dates.map((date) => dateCell(date, ({ ready }) => ready, footnotes))] },
        {
          cells: ['', 'promise', ...dates.map((date) => dateCell(date, ({ promise }) => promise, footnotes))],
        },
      ];
    }),
    style,
  );
  return withNotes(table, footnotes);
}

function dateCell(
  date: PromisedDate,
  which: (date: PromisedDate) => Moment | null,
  footnotes: Footnotes,
): string {
  const moment = which(date);
  return moment === null
    ? footnotes.mark(date.refused ?? 'The lab does not close any more.')
    : momentText(moment.at);
}

function movesTable({ moves, ways, chosen }: PromisedRequest, style: Style): string {
  const footnotes = new Footnotes();
  const asked = ways.find(({ route }) => route === chosen);
  const dates = (all: readonly PromisedDate[]): string[] =>
    all.map((date) => dateCell(date, ({ promise }) => promise, footnotes));
  const table = tableText(
    [words('promise'), ...DATE_COLUMNS, numbers('h later, mean')],
    [
      ...(asked === undefined ? [] : [{ cells: ['as asked', ...dates(asked.dates), ''] }]),
      ...moves.map((move) => ({
        cells: [move.what, ...dates(move.dates), estimateText(move.hours, HOURS, footnotes)],
      })),
    ],
    style,
  );
  return withNotes(table, footnotes);
}

function effectsTable({ effects }: Pick<PromisedRequest, 'effects'>, style: Style): string {
  const footnotes = new Footnotes();
  const shown = effects.slice(0, MOST_EFFECTS);
  const share = (estimate: EstimateOrRefused | null): string =>
    estimate === null ? 'no promise' : estimateText(estimate, PERCENT, footnotes);
  const table = tableText(
    [
      words('job'),
      words('what'),
      words('due'),
      numbers('on time before, %'),
      numbers('after, %'),
      numbers('h later, mean'),
    ],
    shown.map((effect) => ({
      cells: [
        effect.job,
        `${effect.quantity} × ${effect.part}${effect.rush ? ', rush' : ''}`,
        effect.due === null ? '' : momentText(effect.due.at),
        share(effect.onTimeBefore),
        share(effect.onTimeAfter),
        estimateText(effect.hoursLater, HOURS, footnotes),
      ],
    })),
    style,
  );
  const more = effects.length - shown.length;
  const rest = more > 0 ? `\n  and ${more} more, which lose less; --json has them all` : '';
  return withNotes(`${table}${rest}`, footnotes);
}
