import { formatLevel, shownOption } from '@buildweek/charts';
import {
  type EstimateOrRefused,
  type PlanDifference,
  type StaffAnswer,
  type StaffPlan,
  signedText,
  type WrittenUnit,
  writtenText,
  writtenUnit,
} from '@buildweek/results';
import { paragraph } from '../terminal/paragraph.ts';
import { listSection, section } from '../terminal/section.ts';
import { harmless, type Style } from '../terminal/style.ts';
import { numbers, type Row, tableText } from '../terminal/table.ts';
import { Footnotes } from './footnotes.ts';
import { handBesideSection } from './hand-beside-section.ts';
import { hoursSection, rulesSection } from './staff-hours.ts';
import { waitingMap } from './waiting-map.ts';

/** Columns of the options, as far as the lab has them: a short title for each measure. */
const COLUMNS: readonly (readonly [measure: string, title: string])[] = [
  ['nine of ten jobs within', 'nine of ten'],
  ['jobs on time', 'on time'],
  ['nine of ten rush jobs within', 'rush'],
  ['wait for people', 'wait for people'],
];

const GROUPS: readonly (readonly [StaffPlan['hoursAgainstToday'], string])[] = [
  ['the same', 'With the same hours'],
  ['more', 'With more hours'],
  ['fewer', 'With fewer hours'],
];

/** Whom to have when, on a terminal: the answer in words, the options, and when jobs wait for people. */
export function staffText(answer: StaffAnswer, style: Style): string {
  const { plans, leftOut, rules } = answer;
  const [today, ...options] = plans;
  if (today === undefined) return '';
  const footnotes = new Footnotes();
  const shown = shownOption(answer);
  const sections = [
    style.heading(harmless(`Whom to have when: ${answer.scenarioName}`)),
    answer.verdict.map((sentence) => paragraph(sentence, '  ')).join('\n'),
    ...GROUPS.map(([kind, title]) => {
      const group = options.filter(({ hoursAgainstToday }) => hoursAgainstToday === kind);
      if (group.length === 0) return '';
      return section(title, optionTable(answer, [today, ...group], footnotes, style), style);
    }),
    footnotes.text(),
    hoursSection(answer, style),
    section(
      'Jobs that wait for a person, by hour of the week',
      waitingMap(shown === null ? [today] : [today, shown], style),
      style,
    ),
    handBesideSection(shown === null ? [today] : [today, shown], style),
    section('What each option changes in the scenario', changesList(options), style),
    rulesSection(plans, rules, style),
    listSection(
      'Left out',
      leftOut.map(({ name, reason }) => `${name}: ${reason}`),
      style,
    ),
    paragraph(basisWords(answer), ''),
    ...answer.notes.map((note) => paragraph(note, '')),
    listSection(
      'Cautions',
      answer.cautions.map(({ text }) => text),
      style,
    ),
    listSection('Warnings', answer.warnings, style),
  ];
  return `${sections.filter((text) => text !== '').join('\n\n')}\n`;
}

/** Options with the measures that matter most, and how each compares with today. */
function optionTable(
  { currency, decidedBy, best }: StaffAnswer,
  plans: readonly StaffPlan[],
  footnotes: Footnotes,
  style: Style,
): string {
  const [today] = plans;
  const columns = COLUMNS.flatMap(([name, title]) => {
    const index = today?.measures.findIndex((measure) => measure.name === name) ?? -1;
    const measure = today?.measures[index];
    if (measure === undefined) return [];
    const values = plans.flatMap((plan) => known(plan.measures[index]?.value));
    return [{ index, title, unit: writtenUnit(measure.unit, values, currency) }];
  });
  const deciding = today?.measures.findIndex(({ name }) => name === decidedBy) ?? -1;
  const unit = columns.find(({ index }) => index === deciding)?.unit;
  const rows = plans.map((plan): Row => {
    const change = changeWords(plan.differences[deciding], unit);
    const verdict = verdictOf(plan, deciding, best?.name ?? null);
    return {
      over: [plan.name, ...(verdict === '' ? [] : [`${verdict}${change}`])].join(': '),
      cells: columns.map((column) => cell(plan.measures[column.index]?.value, column.unit, footnotes)),
    };
  });
  return tableText(
    columns.map(({ title, unit: { many } }) => numbers(`${title}, ${many}`)),
    rows,
    style,
  );
}

function verdictOf(plan: StaffPlan, deciding: number, best: string | null): string {
  const difference = plan.differences[deciding];
  if (difference === undefined) return '';
  if (plan.name === best) return 'best';
  const isAsGood =
    plan.againstBest?.outcome === 'not told apart' || plan.againstBest?.outcome === 'no difference';
  if (best !== null && isAsGood) return 'as good as the best';
  return difference.outcome === 'not told apart' || difference.outcome === 'no difference'
    ? 'as today'
    : `${difference.outcome} than today`;
}

function changesList(options: readonly StaffPlan[]): string {
  return options
    .map(({ name, meaning, changes }) =>
      [
        paragraph(`${name}${meaning === '' ? '' : `: ${meaning}`}`, '  '),
        // Not broken into lines: to be copied.
        ...changes.map((change) => harmless(`      ${change}`)),
      ].join('\n'),
    )
    .join('\n');
}

function cell(value: EstimateOrRefused | undefined, unit: WrittenUnit, footnotes: Footnotes): string {
  if (value === undefined) return '';
  return value.kind === 'estimate' ? writtenText(value, unit) : footnotes.mark(value.reason);
}

/** ", -1.8 days (-2.1 to -1.4)"; nothing where nothing is known. */
function changeWords(difference: PlanDifference | undefined, unit: WrittenUnit | undefined): string {
  if (difference?.difference.kind !== 'estimate' || unit === undefined) return '';
  if (difference.outcome === 'no difference') return '';
  return `, change ${signedText(difference.difference, unit)} ${unit.many}`;
}

function known(value: EstimateOrRefused | undefined): number[] {
  return value?.kind === 'estimate' ? [value.value] : [];
}

function basisWords({ run, differencesLevel, decidedBy }: StaffAnswer): string {
  const { replications, weeks, ignoredWeeks, level, seed } = run;
  const order = decidedBy === null ? '' : ` Options are put in order by: ${decidedBy}.`;
  return `${replications} replications of ${weeks} weeks after ${ignoredWeeks.weeks} that are left out, seed “${seed}”. Values stand with their ${formatLevel(level)} intervals; every change with one of ${formatLevel(differencesLevel)}, so that with ${formatLevel(level)} confidence those of all options hold at once in each measure. “Nine of ten” is the time within which nine of ten jobs of one period are finished, averaged over periods; “rush” is the same of rush jobs.${order}`;
}
