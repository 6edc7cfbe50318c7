import { COST_LABELS, caseNote, caseRows } from '@buildweek/charts';
import {
  bareMoneyText,
  CENTS,
  type CostLine,
  type EstimateOrRefused,
  type Money,
  moneyFigure,
  moneyRangeText,
  periodName,
  type Results,
  WHOLE,
} from '@buildweek/results';
import { type DrawnChart, figure } from '../figure.ts';
import { term } from '../glossary.ts';
import { type Content, type Html, html, nameText } from '../html.ts';
import { table } from '../table.ts';

/** What the lab costs, for each finished part and in a year, and what it is worth. */
export function moneySection(results: Results, charts: ReadonlyMap<string, DrawnChart>): Html {
  const { money, run } = results;
  if (money === null) return html``;
  const { perPartOnePeriod: period, currency } = money;
  return html`
<section id="money" aria-labelledby="money-title">
<h2 id="money-title">Money</h2>
<p class="lede">All amounts are in ${currency}. The ${term('cost in a year')}: a purchase is spread over its life with interest; people are paid for
every hour of their roster, holidays and absence included.${
    period.kind === 'prediction'
      ? ` In any one ${periodName(run.weeks)} a finished part may cost ${moneyRangeText(period, currency, CENTS)}.`
      : ''
  }</p>
${figure(charts, 'cost-split')}
${costTable(money)}
${committedTable(money)}
${caseTable(money, run)}
<h3>What the amounts leave out</h3>
<ul class="notes">${money.notContained.map((sentence) => html`<li>${sentence}</li>`)}</ul>
</section>`;
}

function costTable({ costs, total, repeats, currency }: Money): Html {
  const line = (name: string, cost: CostLine): Content[] => [
    name,
    cell(cost.perYear, WHOLE),
    cell(cost.perPart, CENTS),
    cell(cost.perJob, CENTS),
  ];
  return table(
    'cost-table',
    `Costs by what they go to, ${currency}, with intervals`,
    [
      { title: 'Cost' },
      { title: `${currency} a year`, numeric: true },
      { title: `${currency} per finished part`, numeric: true },
      { title: `${currency} per finished job`, numeric: true },
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

function committedTable({ committed, purchases, currency }: Money): Html {
  const amount = (value: number): string => bareMoneyText(value, WHOLE);
  return table(
    'committed-table',
    `Known beforehand: what has to be bought, and what the lab costs in a year whatever it does, ${currency}`,
    [
      { title: 'What' },
      { title: 'Number', numeric: true },
      { title: 'To be bought', numeric: true },
      { title: 'Price of these', numeric: true },
      { title: 'Delivery and commissioning, weeks', numeric: true },
      { title: 'Purchase, a year', numeric: true },
      { title: 'Upkeep, a year', numeric: true },
      { title: 'In all, a year', numeric: true },
    ],
    [
      ...committed.equipment.map(({ group, count, capitalPerYear, upkeepPerYear }): Content[] => {
        const bought = purchases.find((purchase) => purchase.group === group);
        return [
          nameText(group),
          count,
          bought?.count ?? '',
          bought === undefined ? '' : amount(bought.amount),
          bought === undefined ? '' : Number(bought.leadWeeks.toFixed(1)),
          amount(capitalPerYear),
          amount(upkeepPerYear),
          amount(capitalPerYear + upkeepPerYear),
        ];
      }),
      ...committed.people.map(({ group, count, perYear }): Content[] => [
        nameText(group),
        count,
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
        amount(purchases.reduce((sum, purchase) => sum + purchase.amount, 0)),
        '',
        amount(committed.equipment.reduce((sum, one) => sum + one.capitalPerYear, 0)),
        amount(committed.equipment.reduce((sum, one) => sum + one.upkeepPerYear, 0)),
        amount(committed.perYear),
      ],
    ],
    true,
  );
}

function caseTable(money: Money, run: Results['run']): Html {
  const rows = caseRows(money);
  const note = caseNote(money.case, run.weeks === 1 ? '1 week' : `${run.weeks} weeks`);
  return html`
<h3>Against sending everything out</h3>
${
  rows.length === 0
    ? html``
    : html`<p class="lede">Over the years: the ${term('net present value')} of the lab, and its ${term('payback')}.</p>
${table(
  'case-table',
  'The lab against having the same parts made outside, with intervals',
  [{ title: 'What' }, { title: 'Found' }],
  rows.map(({ what, found }) => [what, found]),
)}`
}
<p class="note">${note}</p>`;
}

function cell(estimate: EstimateOrRefused, decimals: number): Content {
  if (estimate.kind !== 'estimate') return html`<span class="none">not given: ${estimate.reason}</span>`;
  const { value, range } = moneyFigure(estimate, decimals);
  return range === null ? value : html`${value} <span class="interval">${range}</span>`;
}
