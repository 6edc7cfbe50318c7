import { formatLevel } from '@buildweek/charts';
import {
  type ComparisonAnswer,
  type EstimateOrRefused,
  type PlanDifference,
  type PlanMeasure,
  type WrittenUnit,
  writtenText,
  writtenUnit,
} from '@buildweek/results';
import { paragraph } from '../terminal/paragraph.ts';
import { listSection, section } from '../terminal/section.ts';
import type { Style } from '../terminal/style.ts';
import { numbers, type Row, tableText, words } from '../terminal/table.ts';
import { Footnotes } from './footnotes.ts';
import { handBesideSection } from './hand-beside-section.ts';

/** What a comparison says on a terminal: a sentence for each pair of plans, then the measures with their differences. */
export function comparisonText(answer: ComparisonAnswer, style: Style): string {
  const measuresOf = (plan: string): readonly PlanMeasure[] =>
    answer.plans.find(({ name }) => name === plan)?.measures ?? [];
  const sections = [
    answer.pairs.map((pair) => paragraph(pair.sentence, '')).join('\n\n'),
    ...answer.pairs.map((pair) => {
      const footnotes = new Footnotes();
      const [before, after] = [measuresOf(pair.against), measuresOf(pair.plan)];
      const table = pairTable(answer, before, after, pair.differences, footnotes, style);
      return section(`“${pair.plan}” against “${pair.against}”`, table + notesOf(footnotes), style);
    }),
    handBesideSection(answer.plans, style),
    paragraph(basisWords(answer), ''),
    listSection(
      'Cautions',
      answer.cautions.map(({ text }) => text),
      style,
    ),
    listSection('Warnings', answer.warnings, style),
  ];
  return `${sections.filter((text) => text !== '').join('\n\n')}\n`;
}

function notesOf(footnotes: Footnotes): string {
  const text = footnotes.text();
  return text === '' ? '' : `\n${text}`;
}

function pairTable(
  { currency }: ComparisonAnswer,
  before: readonly PlanMeasure[],
  after: readonly PlanMeasure[],
  differences: readonly PlanDifference[],
  footnotes: Footnotes,
  style: Style,
): string {
  const rows = before.flatMap((measure, index): Row[] => {
    const [other, difference] = [after[index], differences[index]];
    if (other === undefined || difference === undefined) return [];
    const unit = writtenUnit(measure.unit, valuesOf([measure.value, other.value]), currency);
    return [
      {
        cells: [
          `${measure.name}, ${unit.many}`,
          cell(measure.value, unit, footnotes),
          cell(other.value, unit, footnotes),
          difference.outcome === 'no difference' ? '0' : cell(difference.difference, unit, footnotes),
          difference.outcome,
        ],
      },
    ];
  });
  return tableText(
    [words('measure'), numbers('before'), numbers('after'), numbers('difference'), words('verdict')],
    rows,
    style,
  );
}

function cell(estimate: EstimateOrRefused, unit: WrittenUnit, footnotes: Footnotes): string {
  return estimate.kind === 'estimate' ? writtenText(estimate, unit) : footnotes.mark(estimate.reason);
}

function valuesOf(estimates: readonly EstimateOrRefused[]): number[] {
  return estimates.flatMap((estimate) => (estimate.kind === 'estimate' ? [estimate.value] : []));
}

function basisWords({ run, differencesLevel }: ComparisonAnswer): string {
  const { replications, weeks, ignoredWeeks, level } = run;
  return `${replications} replications of ${weeks} weeks after ${ignoredWeeks.weeks} that are left out, each plan on the same random numbers, seed “${run.seed}”. Values stand with their ${formatLevel(level)} intervals; every difference with one of ${formatLevel(differencesLevel)}, so that with ${formatLevel(level)} confidence all of them hold at once. The time that nine of ten jobs take is that of one period, averaged over periods. People are at work for a share of their hours on duty, machines of the clock.`;
}
