import { COST_LABELS } from '@buildweek/charts';
import type { CostLine, Money, Results } from '@buildweek/results';
import { type FigureName, type FigureRow, figureRow, knownRow } from './figure-row.ts';

/** What the lab costs and what it is worth. */
export function moneyRows({ money }: Results): FigureRow[] {
  if (money === null) return [];
  return [...costRows(money), ...committedRows(money), ...caseRows(money)];
}

function nameIn(currency: string) {
  return (subject: string, measure: string, per = ''): FigureName => ({
    section: 'Money',
    subject,
    measure,
    unit: `${currency}${per}`,
  });
}

function costRows({ currency, costs, total, repeats, perPartOnePeriod }: Money): FigureRow[] {
  const of = nameIn(currency);
  const line = (subject: string, { perYear, perPart, perJob }: CostLine): FigureRow[] => [
    figureRow(of(subject, 'cost', ' per year'), perYear),
    figureRow(of(subject, 'cost', ' per finished part'), perPart),
    figureRow(of(subject, 'cost', ' per finished job'), perJob),
  ];
  return [
    ...costs.flatMap((cost) => line(COST_LABELS[cost.kind], cost)),
    ...line('material for parts made again', repeats),
    ...line('all costs', total),
    figureRow(of('all costs', 'cost', ' per finished part'), perPartOnePeriod),
  ];
}

function committedRows({ currency, committed, purchases }: Money): FigureRow[] {
  const of = nameIn(currency);
  return [
    ...committed.equipment.flatMap(({ group, capitalPerYear, upkeepPerYear }) => [
      knownRow(of(group, 'purchase spread over its life', ' per year'), capitalPerYear),
      knownRow(of(group, 'upkeep', ' per year'), upkeepPerYear),
    ]),
    ...committed.people.flatMap(({ group, hoursPerYear, perYear }) => [
      knownRow(of(group, 'pay', ' per year'), perYear),
      knownRow({ ...of(group, 'hours of the roster'), unit: 'hours per year' }, hoursPerYear),
    ]),
    knownRow(of('other costs', 'committed cost', ' per year'), committed.otherPerYear),
    knownRow(of('whole lab', 'committed cost', ' per year'), committed.perYear),
    ...purchases.flatMap(({ group, count, amount, leadWeeks }) => [
      knownRow({ ...of(group, 'to be bought'), unit: 'number' }, count),
      knownRow(of(group, 'purchase'), amount),
      knownRow({ ...of(group, 'delivery and commissioning'), unit: 'weeks' }, leadWeeks),
    ]),
  ];
}

function caseRows({ currency, case: found }: Money): FigureRow[] {
  if (found.kind !== 'compared') return [];
  const of = nameIn(currency);
  const subject = 'against sending everything out';
  const years = `over ${found.years} years at ${Number((100 * found.interest).toPrecision(4))} % interest`;
  return [
    figureRow(of(subject, 'the same parts made outside', ' per year'), found.outsidePerYear),
    figureRow(of(subject, 'saved by the lab, before purchases', ' per year'), found.savedPerYear),
    figureRow(of(subject, `net present value ${years}`), found.netPresentValue),
    figureRow({ ...of(subject, 'paid for after'), unit: 'years' }, found.paybackYears),
    figureRow(
      { ...of(subject, `paid for within ${found.paybackWithinYears} years`), unit: 'share of replications' },
      found.paidBackInTime,
    ),
    figureRow({ ...of(subject, 'internal rate of return'), unit: 'share per year' }, found.internalRate),
  ];
}
