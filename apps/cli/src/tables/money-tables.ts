import { COST_LABELS, caseNote, caseRows, formatShare } from '@buildweek/charts';
import {
  bareMoneyText,
  CENTS,
  type CommittedCost,
  type CostLine,
  type EstimateOrRefused,
  type Money,
  moneyFigure,
  moneyRangeText,
  type Purchase,
  periodName,
  type Results,
  WHOLE,
} from '@buildweek/results';
import { paragraph } from '../terminal/paragraph.ts';
import type { Style } from '../terminal/style.ts';
import { numbers, tableText, words } from '../terminal/table.ts';

/** What the lab costs in a year whatever it does, group by group, and what has to be bought for it. */
export function committedTable(
  committed: CommittedCost,
  purchases: readonly Purchase[],
  currency: string,
  style: Style,
): string {
  const money = (amount: number): string => bareMoneyText(amount, WHOLE);
  const sum = (amounts: readonly number[]): number => amounts.reduce((all, amount) => all + amount, 0);
  const rows = [
    ...committed.equipment.map(({ group, count, capitalPerYear, upkeepPerYear }) => {
      const bought = purchases.find((purchase) => purchase.group === group);
      return [
        group,
        String(count),
        bought === undefined ? '' : `${bought.count} for ${money(bought.amount)}`,
        money(capitalPerYear),
        money(upkeepPerYear),
        money(capitalPerYear + upkeepPerYear),
      ];
    }),
    ...committed.people.map(({ group, count, perYear }) => [
      group,
      String(count),
      '',
      '',
      '',
      money(perYear),
    ]),
    ...(committed.otherPerYear > 0 ? [['other costs', '', '', '', '', money(committed.otherPerYear)]] : []),
    [
      'together',
      '',
      purchases.length === 0 ? 'nothing' : money(sum(purchases.map(({ amount }) => amount))),
      money(sum(committed.equipment.map(({ capitalPerYear }) => capitalPerYear))),
      money(sum(committed.equipment.map(({ upkeepPerYear }) => upkeepPerYear))),
      money(committed.perYear),
    ],
  ];
  const columns = [
    words('what'),
    numbers('number'),
    numbers(`to be bought, ${currency}`),
    numbers(`purchase, ${currency} a year`),
    numbers(`upkeep, ${currency} a year`),
    numbers(`in all, ${currency} a year`),
  ];
  const note =
    'A purchase is spread over its life with interest, less what it is worth at the end. People are paid for every hour of their roster, holidays and absence included. Material, overtime and work sent out come on top.';
  return `${tableText(
    columns,
    rows.map((cells) => ({ cells })),
    style,
  )}\n${paragraph(note, '  ')}`;
}

/** Longer ones are reasons why there is no figure; they stand below their line. */
const LONGEST_FINDING = 60;

/** What the lab costs by kind, and the lab against sending everything out. */
export function moneyTables(money: Money, run: Results['run'], style: Style): string {
  const { currency, costs, total, repeats, perPartOnePeriod: period } = money;
  const line = (name: string, cost: CostLine): { cells: string[] } => ({
    cells: [
      name,
      cell(cost.perYear, WHOLE),
      total.perYear.value === 0 ? '' : formatShare(cost.perYear.value / total.perYear.value),
      cell(cost.perPart, CENTS),
      cell(cost.perJob, CENTS),
    ],
  });
  const table = tableText(
    [
      words('cost'),
      numbers(`${currency} a year`),
      numbers('share'),
      numbers(`${currency} per finished part`),
      numbers(`${currency} per finished job`),
    ],
    [
      ...costs.flatMap((cost) => [
        line(COST_LABELS[cost.kind], cost),
        ...(cost.kind === 'material' && repeats.perYear.value > 0
          ? [line('  of it for parts made again', repeats)]
          : []),
      ]),
      line('all costs', total),
    ],
    style,
  );
  const onePeriod =
    period.kind === 'prediction'
      ? `In any one ${periodName(run.weeks)} a finished part may cost ${moneyRangeText(period, currency, CENTS)}.`
      : '';
  const weeks = run.weeks === 1 ? '1 week' : `${run.weeks} weeks`;
  const rows = caseRows(money);
  return [
    table,
    ...(onePeriod === '' ? [] : [paragraph(onePeriod, '  ')]),
    ...(rows.length === 0
      ? []
      : [
          '',
          tableText(
            [words('the lab against sending everything out'), words('')],
            rows.map(({ what, found }) =>
              found.length > LONGEST_FINDING ? { cells: [what, ''], under: found } : { cells: [what, found] },
            ),
            style,
          ),
        ]),
    paragraph(caseNote(money.case, weeks), '  '),
    '',
    ...money.notContained.map((sentence) => paragraph(sentence, '  - ')),
  ].join('\n');
}

function cell(estimate: EstimateOrRefused, decimals: number): string {
  if (estimate.kind !== 'estimate') return 'not given';
  const { value, range } = moneyFigure(estimate, decimals);
  return range === null ? value : `${value} (${range})`;
}
