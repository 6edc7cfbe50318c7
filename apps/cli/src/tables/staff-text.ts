import { formatEstimate, formatLevel, formatPlain, shownOption } from '@buildweek/charts';
import {
  bareMoneyText,
  type EstimateOrRefused,
  type PlanDifference,
  type StaffAnswer,
  type StaffPlan,
  WHOLE,
  type WrittenUnit,
  writtenUnit,
} from '@buildweek/results';
import { breachWords } from '@buildweek/study';
import { paragraph } from '../terminal/paragraph.ts';
import { listSection, section } from '../terminal/section.ts';
import { harmless, type Style } from '../terminal/style.ts';
import { numbers, type Row, tableText, words } from '../terminal/table.ts';
import { Footnotes } from './footnotes.ts';
import { waitingMap } from './waiting-map.ts';

/** Columns of the first table, as far as the lab has them: a short title for each measure. */
const COLUMNS: readonly (readonly [measure: string, title: string])[] = [
  ['nine of ten jobs within', 'nine of ten within'],
  ['jobs on time', 'on time'],
  ['nine of ten rush jobs within', 'nine of ten rush'],
  ['a job waits for people', 'waits for people'],
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
    section('Hours of people, a week', hoursTable(answer, style), style),
    section(
      'Jobs that wait for a person, by hour of the week',
      waitingMap(shown === null ? [today] : [today, shown], style),
      style,
    ),
    section('What each option changes in the scenario', changesList(options), style),
    listSection(
      `Rules: ${formatPlain(rules.restHours)} h of rest, ${formatPlain(rules.hoursPerWeek)} h a week, ${rules.daysInARow} days in a row. Broken by`,
      breachLines(plans),
      style,
    ),
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
  const rows = plans.map(
    (plan): Row => ({
      cells: [
        plan.name,
        ...columns.map(({ index, unit }) => cell(plan.measures[index]?.value, unit, footnotes)),
        differenceCell(plan.differences[deciding], columns.find(({ index }) => index === deciding)?.unit),
        verdictOf(plan, deciding, best?.name ?? null),
      ],
    }),
  );
  return tableText(
    [
      words('option'),
      ...columns.map(({ title, unit }) => numbers(`${title}, ${unit.many}`)),
      numbers(`change against today, ${columns.find(({ index }) => index === deciding)?.unit.many ?? ''}`),
      words('verdict'),
    ],
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

function hoursTable({ plans, currency }: StaffAnswer, style: Style): string {
  const costs = plans.some(({ costPerYear }) => costPerYear !== null);
  const today = plans[0];
  const measure = (plan: StaffPlan, name: string): string => {
    const value = plan.measures.find((one) => one.name === name)?.value;
    return value?.kind === 'estimate' ? formatPlain(value.value) : '';
  };
  const rows = plans.map(
    (plan): Row => ({
      cells: [
        plan.name,
        formatPlain(plan.duty.roster),
        measure(plan, 'overtime of all people'),
        formatPlain(plan.duty.night),
        formatPlain(plan.duty.alone),
        formatPlain(plan.duty.nobody),
        measure(plan, 'machines run with nobody there'),
        ...(costs ? [costCell(plan, today)] : []),
      ],
    }),
  );
  return tableText(
    [
      words('option'),
      numbers('on duty'),
      numbers('overtime'),
      numbers('at night'),
      numbers('one person alone'),
      numbers('nobody there'),
      numbers('machines run then'),
      ...(costs ? [numbers(`cost, ${currency ?? 'money'} a year`)] : []),
    ],
    rows,
    style,
  );
}

/** The cost of today, and what an option adds to it. */
function costCell({ costPerYear }: StaffPlan, today: StaffPlan | undefined): string {
  const before = today?.costPerYear ?? null;
  if (costPerYear === null || before === null) return '';
  const more = costPerYear - before;
  const cost = bareMoneyText(costPerYear, WHOLE);
  return Math.abs(more) < 0.5 ? cost : `${cost} (${more > 0 ? '+' : ''}${bareMoneyText(more, WHOLE)})`;
}

function changesList(options: readonly StaffPlan[]): string {
  return options
    .map(({ name, meaning, changes }) =>
      [
        harmless(`  ${name}${meaning === '' ? '' : `: ${meaning}`}`),
        // Not broken into lines: to be copied.
        ...changes.map((change) => harmless(`      ${change}`)),
      ].join('\n'),
    )
    .join('\n');
}

function breachLines(plans: readonly StaffPlan[]): string[] {
  return plans.flatMap(({ name, breaches }) =>
    breaches.map((breach) => `${name}: ${breachWords(breach)} (first in the week of ${breach.firstDate})`),
  );
}

function cell(value: EstimateOrRefused | undefined, unit: WrittenUnit, footnotes: Footnotes): string {
  if (value === undefined) return '';
  return value.kind === 'estimate'
    ? formatEstimate(value, { ...unit, one: '', many: '' })
    : footnotes.mark(value.reason);
}

function differenceCell(difference: PlanDifference | undefined, unit: WrittenUnit | undefined): string {
  if (difference === undefined || unit === undefined) return '';
  if (difference.outcome === 'no difference') return '0';
  if (difference.difference.kind !== 'estimate') return 'not known';
  const sign = difference.difference.value > 0 ? '+' : '';
  return sign + formatEstimate(difference.difference, { ...unit, one: '', many: '' });
}

function known(value: EstimateOrRefused | undefined): number[] {
  return value?.kind === 'estimate' ? [value.value] : [];
}

function basisWords({ run, differencesLevel, decidedBy }: StaffAnswer): string {
  const { replications, weeks, ignoredWeeks, level, seed } = run;
  const order = decidedBy === null ? '' : ` Options are put in order by: ${decidedBy}.`;
  return `${replications} replications of ${weeks} weeks after ${ignoredWeeks.weeks} that are left out, seed “${seed}”. Values stand with their ${formatLevel(level)} intervals; every change with one of ${formatLevel(Number(differencesLevel.toPrecision(4)))}, so that with ${formatLevel(level)} confidence those of all options hold at once in each measure. A lead time that nine of ten jobs keep is that of one period, averaged over periods.${order}`;
}
