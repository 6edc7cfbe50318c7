import { COST_LABELS, caseRows } from '@buildweek/charts';
import { bareMoneyText, CENTS, type CostLine, type Money, WHOLE } from '@buildweek/results';
import type { Cell, Grid } from './block.ts';
import { Cells, numbers } from './cells.ts';

const amount = (value: number): string => bareMoneyText(value, WHOLE);

/** Costs by what they go to. */
export function costGrid({ costs, total, repeats, currency }: Money): Grid[] {
  const cells = new Cells();
  const line = (name: string, cost: CostLine): Cell[] => [
    name,
    cells.money(cost.perYear, WHOLE),
    cells.money(cost.perPart, CENTS),
    cells.money(cost.perJob, CENTS),
  ];
  return cells.grid(
    `Costs by what they go to, ${currency}, with intervals`,
    [
      { title: 'Cost' },
      numbers(`${currency} a year`),
      numbers(`${currency} per finished part`),
      numbers(`${currency} per finished job`),
    ],
    [
      ...costs.flatMap((cost) => [
        line(COST_LABELS[cost.kind], cost),
        ...(cost.kind === 'material' && repeats.perYear.value > 0
          ? [line('– of it for parts made again', repeats)]
          : []),
      ]),
      line('all costs', total),
    ],
  );
}

/** What is known beforehand: purchases, and what the lab costs whatever it does. */
export function committedGrid({ committed, purchases, currency }: Money): Grid[] {
  const sum = (values: readonly number[]): string => amount(values.reduce((all, one) => all + one, 0));
  return new Cells().grid(
    `Known beforehand: what has to be bought, and what the lab costs in a year whatever it does, ${currency}`,
    [
      { title: 'What' },
      numbers('Number'),
      numbers('To be bought'),
      numbers('Price of these'),
      numbers('Delivery, weeks'),
      numbers('Purchase, a year'),
      numbers('Upkeep, a year'),
      numbers('In all, a year'),
    ],
    [
      ...committed.equipment.map(({ group, count, capitalPerYear, upkeepPerYear }): Cell[] => {
        const bought = purchases.find((purchase) => purchase.group === group);
        return [
          group,
          String(count),
          bought === undefined ? '' : String(bought.count),
          bought === undefined ? '' : amount(bought.amount),
          bought === undefined ? '' : String(Number(bought.leadWeeks.toFixed(1))),
          amount(capitalPerYear),
          amount(upkeepPerYear),
          amount(capitalPerYear + upkeepPerYear),
        ];
      }),
      ...committed.people.map(({ group, count, perYear }): Cell[] => [
        group,
        String(count),
        '',
        '',
        '',
        '',
        '',
        amount(perYear),
      ]),
      ...(committed.otherPerYear > 0
        ? [['Other costs', '', '', '', '', '', '', amount(committed.otherPerYear)]]
        : []),
      [
        'Together',
        '',
        '',
        sum(purchases.map((one) => one.amount)),
        '',
        sum(committed.equipment.map((one) => one.capitalPerYear)),
        sum(committed.equipment.map((one) => one.upkeepPerYear)),
        amount(committed.perYear),
      ],
    ],
  );
}

/** The lab against having the same parts made outside. */
export function caseGrid(money: Money): Grid[] {
  return new Cells().grid(
    'The lab against having the same parts made outside, with intervals',
    [{ title: 'What' }, { title: 'Found' }],
    caseRows(money).map(({ what, found }) => [what, found]),
  );
}
