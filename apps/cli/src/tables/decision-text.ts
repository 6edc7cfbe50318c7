import { formatLevel } from '@buildweek/charts';
import {
  bareMoneyText,
  type DecisionAnswer,
  type DecisionOption,
  type EstimateOrRefused,
  type KeyNumber,
  SPEED_MEASURE,
  WHOLE,
  type WrittenUnit,
  writtenText,
  writtenUnit,
} from '@buildweek/results';
import { paragraph } from '../terminal/paragraph.ts';
import { listSection, section } from '../terminal/section.ts';
import { harmless, type Style } from '../terminal/style.ts';
import { numbers, type Row, tableText, words } from '../terminal/table.ts';
import { Footnotes } from './footnotes.ts';

const ROLES: Readonly<Record<DecisionOption['role'], string>> = {
  today: 'as it is',
  recommended: 'recommended',
  cheaper: 'cheaper',
  faster: 'faster',
};

const YEARS: WrittenUnit = { size: 1, one: 'year', many: 'years', leastDecimals: 1, isMoney: false };

/** What a decision says on a terminal: the proposal, the three numbers, the options, the reasons. */
export function decisionText(answer: DecisionAnswer, style: Style): string {
  const { run, proposal, question, keyNumbers, reasons, cautions, warnings } = answer;
  const footnotes = new Footnotes();
  const numbersTable = keyTable(keyNumbers, answer.currency, footnotes, style);
  const options = optionsTable(answer, footnotes, style);
  const basis = `${run.replications} replications of ${run.weeks} weeks of each option after ${run.ignoredWeeks.weeks} that are left out, on the same random numbers, seed “${run.seed}”. Values stand with their ${formatLevel(run.level)} intervals.`;
  const topics = cautions.map(({ topic }) => topic).filter((topic) => topic !== 'What this is not');
  const sections = [
    paragraph(harmless(question), ''),
    style.heading(paragraph(harmless(proposal), '')),
    section('The numbers that matter', numbersTable, style),
    section('The options', options, style),
    footnotes.text(),
    listSection('Why', reasons, style),
    paragraph(basis, ''),
    listSection('Warnings', warnings, style),
    topics.length === 0
      ? ''
      : paragraph(
          `Cautions: ${topics.join('; ')}. Go by the safety data sheets, the rules of the site, and the people licensed to judge them; this is no safety assessment.`,
          '',
        ),
  ];
  return `${sections.filter((text) => text !== '').join('\n\n')}\n`;
}

function keyTable(
  keyNumbers: readonly KeyNumber[],
  currency: string | null,
  footnotes: Footnotes,
  style: Style,
): string {
  const rows = keyNumbers.map((number): Row => {
    const unit = unitOf(number, currency);
    return {
      cells: [
        `${number.label}, ${unit.many}`,
        cell(number.value, unit, footnotes),
        number.today === null ? '' : cell(number.today, unit, footnotes),
        number.note,
      ],
    };
  });
  return tableText([words(''), numbers('recommended'), numbers('as it is'), words('')], rows, style);
}

function unitOf({ unit, value, today }: KeyNumber, currency: string | null): WrittenUnit {
  if (unit === 'years') return YEARS;
  const values = [value, today].flatMap((one) => (one?.kind === 'estimate' ? [one.value] : []));
  return writtenUnit(unit, values, currency);
}

function optionsTable({ options, currency }: DecisionAnswer, footnotes: Footnotes, style: Style): string {
  const hours = options.flatMap(({ measures }) => {
    const value = measures.find(({ name }) => name === SPEED_MEASURE)?.value;
    return value?.kind === 'estimate' ? [value.value] : [];
  });
  const time = writtenUnit('hours', hours, null);
  const share = writtenUnit('share', [], null);
  const hasMoney = options.some(({ committedCost }) => committedCost !== null);
  const targets = options[0]?.targets ?? [];
  const rows = options.map((option): Row => {
    const speed = option.measures.find(({ name }) => name === SPEED_MEASURE)?.value;
    return {
      cells: [
        ROLES[option.role],
        option.changes.length === 0 ? 'no change' : option.changes.join('; '),
        option.meets,
        speed === undefined ? '' : cell(speed, time, footnotes),
        ...option.targets.map(({ value }) => cell(value, share, footnotes)),
        ...(hasMoney ? [amount(option.committedCost), amount(option.purchase)] : []),
      ],
    };
  });
  return tableText(
    [
      words(''),
      words('changes'),
      words('targets'),
      numbers(`${SPEED_MEASURE}, ${time.many}`),
      ...targets.map(({ target }) => numbers(`${target}, ${share.many}`)),
      ...(hasMoney
        ? [numbers(`committed a year, ${currency ?? ''}`), numbers(`to buy, ${currency ?? ''}`)]
        : []),
    ],
    rows,
    style,
  );
}

function amount(value: number | null): string {
  return value === null ? '' : bareMoneyText(value, WHOLE);
}

function cell(estimate: EstimateOrRefused, unit: WrittenUnit, footnotes: Footnotes): string {
  return estimate.kind === 'estimate' ? writtenText(estimate, unit) : footnotes.mark(estimate.reason);
}
