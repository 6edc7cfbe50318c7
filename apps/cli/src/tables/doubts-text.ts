import { formatLevel } from '@buildweek/charts';
import {
  type DoubtAnswer,
  type DoubtEnd,
  type DoubtsAnswer,
  type WrittenUnit,
  writtenUnit,
} from '@buildweek/results';
import { section } from '../terminal/section.ts';
import type { Style } from '../terminal/style.ts';
import { numbers, tableText, words } from '../terminal/table.ts';
import { Footnotes } from './footnotes.ts';
import { estimateText, questionText, withNotes } from './question-text.ts';

const PERCENT = { size: 0.01, leastDecimals: 0, isMoney: false };

/** Which assumptions matter, on one screen. */
export function doubtsText(answer: DoubtsAnswer, style: Style): string {
  const { verdict, measure, differencesLevel, worlds, run } = answer;
  const unit = unitOf(answer);
  return questionText(
    verdict,
    [
      heldText(answer, style),
      section(
        `What each does by itself to “${measure.name}”, ${unit.many}`,
        effectsTable(answer, unit, style),
        style,
      ),
      section(
        'What explains the differences of it between the drawn worlds, %',
        explainedTable(answer, style),
        style,
      ),
    ],
    `Every difference has one of ${formatLevel(differencesLevel)}, so that with ${formatLevel(run.level)} confidence all of them hold at once. ${worlds} drawn worlds, one period in each; shares of periods have exact intervals, shares that are explained those of the jackknife.`,
    answer,
    style,
  );
}

function heldText({ held, allHeld }: DoubtsAnswer, style: Style): string {
  if (held.length === 0) return '';
  const rows = allHeld === null ? held : [...held, allHeld];
  const footnotes = new Footnotes();
  const table = tableText(
    [words('target'), numbers('as stated'), numbers('in drawn worlds')],
    rows.map(({ target, asStated, inWorlds }) => ({
      cells: [target, estimateText(asStated, PERCENT, footnotes), estimateText(inWorlds, PERCENT, footnotes)],
    })),
    style,
  );
  return section('In which share of the periods it is met, %', table, style);
}

function unitOf({ doubts, measure }: DoubtsAnswer): WrittenUnit {
  const values = doubts.flatMap(({ low, high }) =>
    [low.value, high.value].flatMap((value) => (value.kind === 'estimate' ? [value.value] : [])),
  );
  const unit = writtenUnit(measure.unit, values, null);
  return measure.unit === 'share' ? { ...unit, many: 'points' } : unit;
}

function effectsTable({ doubts }: DoubtsAnswer, unit: WrittenUnit, style: Style): string {
  const footnotes = new Footnotes();
  const table = tableText(
    [words('doubt'), numbers('range'), numbers('at the low end'), numbers('at the high end'), words('')],
    doubts.map((doubt) => ({
      cells: [
        doubt.name,
        `${percent(doubt.low.factor)} to ${percent(doubt.high.factor)} %`,
        differenceText(doubt.low, unit, footnotes),
        differenceText(doubt.high, unit, footnotes),
        outcomeWords(doubt),
      ],
    })),
    style,
  );
  return withNotes(table, footnotes);
}

function differenceText({ difference, outcome }: DoubtEnd, unit: WrittenUnit, footnotes: Footnotes): string {
  if (outcome === 'no difference') return '0';
  const sign = difference.kind === 'estimate' && difference.value > 0 ? '+' : '';
  return `${sign}${estimateText(difference, unit, footnotes)}`;
}

function outcomeWords({ low, high }: DoubtAnswer): string {
  const outcomes = [low.outcome, high.outcome];
  if (outcomes.every((outcome) => outcome === 'no difference')) return 'no effect';
  return outcomes.every((outcome) => outcome === 'not told apart' || outcome === 'no difference')
    ? 'not told from chance'
    : '';
}

function explainedTable({ doubts, explainedTogether }: DoubtsAnswer, style: Style): string {
  const footnotes = new Footnotes();
  const size = ({ explains }: DoubtAnswer): number => (explains.kind === 'estimate' ? explains.value : 0);
  const table = tableText(
    [words('doubt'), numbers('explains')],
    [
      ...[...doubts]
        .sort((one, other) => size(other) - size(one))
        .map(({ name, explains }) => ({ cells: [name, estimateText(explains, PERCENT, footnotes)] })),
      { cells: ['all together', estimateText(explainedTogether, PERCENT, footnotes)] },
    ],
    style,
  );
  return withNotes(table, footnotes);
}

function percent(factor: number): number {
  return Number((factor * 100).toPrecision(4));
}
