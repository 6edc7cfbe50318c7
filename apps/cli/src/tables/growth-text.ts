import { formatCount, formatLevel, formatShare, VERDICT_MARKS } from '@buildweek/charts';
import type { GrowthAnswer, GrowthStep, TargetAtLevel } from '@buildweek/results';
import { section } from '../terminal/section.ts';
import { harmless, type Style } from '../terminal/style.ts';
import { numbers, tableText, words } from '../terminal/table.ts';
import { Footnotes } from './footnotes.ts';
import { estimateText, questionText, withNotes } from './question-text.ts';

const PERCENT = { size: 0.01, leastDecimals: 0, isMoney: false };

/** Until when the lab is large enough, on one screen. */
export function growthText(answer: GrowthAnswer, style: Style): string {
  return questionText(
    answer.verdict,
    [
      section('If nothing is bought: the share of each target, %', monthsTable(answer, style), style),
      stepsText(answer, style),
      purchasesText(answer, style),
    ],
    `Met and missed are said from a one-sided confidence of ${formatLevel(answer.run.level)} on.`,
    answer,
    style,
  );
}

function monthsTable({ months, targets }: GrowthAnswer, style: Style): string {
  const footnotes = new Footnotes();
  // Several wordings side by side would not fit a screen: they stand below, by number.
  const isOne = targets.length === 1;
  const table = tableText(
    [
      words('month'),
      numbers('demand'),
      ...targets.map(({ wording }, index) => numbers(isOne ? wording : `target ${index + 1}`)),
    ],
    months.map(({ label, demand, targets: found }) => ({
      cells: [label, formatShare(demand), ...found.map((one) => targetCell(one, footnotes))],
    })),
    style,
  );
  const legend = `  ${Object.entries(VERDICT_MARKS)
    .map(([verdict, mark]) => `${mark} ${verdict}`)
    .join(', ')}`;
  const names = isOne
    ? []
    : targets.map(({ wording }, index) => `  target ${index + 1}: ${harmless(wording)}`);
  return [withNotes(table, footnotes), ...names, legend].join('\n');
}

function targetCell({ share, verdict }: TargetAtLevel, footnotes: Footnotes): string {
  return `${estimateText(share, PERCENT, footnotes)} ${VERDICT_MARKS[verdict]}`;
}

function stepsText(answer: GrowthAnswer, style: Style): string {
  const { steps, months, neededIn, currency } = answer;
  if (neededIn === null || steps.length === 0) return '';
  const footnotes = new Footnotes();
  const isPriced = steps.some(({ perYear }) => perYear !== null);
  const table = tableText(
    [
      words('one more'),
      words('restores, until'),
      words('order by'),
      numbers('gain, points'),
      ...(isPriced ? [numbers(`${currency} a year`)] : []),
      words(''),
    ],
    steps.map((step) => ({
      cells: [
        step.name.replace(/^one more /, ''),
        step.restores === 'no' ? 'no' : `${step.restores}, ${holdsWords(step, answer)}`,
        step.restores === 'no' ? '' : orderWords(step),
        estimateText(step.gain, PERCENT, footnotes),
        ...(isPriced ? [yearlyWords(step)] : []),
        step.overBudget.length === 0 ? '' : 'over budget',
      ],
    })),
    style,
  );
  return section(
    `What one more of each brings in ${months[neededIn]?.label ?? ''}`,
    withNotes(table, footnotes),
    style,
  );
}

/** What to buy one after the other, where once is not enough. */
function purchasesText(answer: GrowthAnswer, style: Style): string {
  const { purchases, currency } = answer;
  if (purchases.length < 2) return '';
  const isPriced = purchases.some(({ perYear }) => perYear !== null);
  const table = tableText(
    [
      words('order by'),
      words('one more, in turn'),
      words('works from'),
      words('holds until'),
      ...(isPriced ? [numbers(`${currency} a year`)] : []),
      words(''),
    ],
    purchases.map((purchase) => ({
      cells: [
        orderWords(purchase),
        purchase.name.replace(/^one more /, ''),
        purchase.months[0]?.label ?? '',
        holdsWords(purchase, answer),
        ...(isPriced ? [yearlyWords(purchase)] : []),
        purchase.overBudget.length === 0 ? '' : 'over budget',
      ],
    })),
    style,
  );
  return section('What to order when, so that all targets hold', table, style);
}

function yearlyWords({ perYear }: Pick<GrowthStep, 'perYear'>): string {
  return perYear === null ? 'not stated' : formatCount(Math.round(perYear));
}

function orderWords({ isLate, orderBy }: Pick<GrowthStep, 'isLate' | 'orderBy'>): string {
  return isLate ? 'at once' : orderBy;
}

function holdsWords(
  { holdsUntil, months }: Pick<GrowthStep, 'holdsUntil' | 'months'>,
  { horizon }: GrowthAnswer,
): string {
  const label = months.find(({ month }) => month === holdsUntil)?.label ?? '';
  return `${label}${holdsUntil === horizon ? ' and on' : ''}`;
}
