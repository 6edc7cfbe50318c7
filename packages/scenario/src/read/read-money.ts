import type { EquipmentCost, PartCost, PeopleCost } from '@buildweek/model';
import type { Fields } from '../fields.ts';
import type { ScenarioMaterialCost, ScenarioMoney } from '../scenario.ts';
import { choice } from '../words/choice.ts';
import { density } from '../words/measure.ts';
import {
  amount,
  type Currency,
  currencyCode,
  interestRate,
  materialPrice,
  perYear,
  weeksOf,
  wholeYears,
  yearlyCost,
  yearsOf,
} from '../words/money.ts';
import { MOST_ALIKE, share, wholeNumber } from '../words/numbers.ts';

/** Keys that have a meaning only where the scenario says something of money. */
const EQUIPMENT_KEYS = [
  ...['price', 'life', 'worth at the end', 'yearly cost', 'owned', 'delivery', 'commissioning', 'ramp-up'],
];
const MONEY_KEYS: Readonly<Record<string, readonly string[]>> = {
  machines: EQUIPMENT_KEYS,
  stations: EQUIPMENT_KEYS,
  people: ['hourly cost', 'overtime'],
  parts: ['material cost', 'price outside'],
};

const MOST_YEARS = 50;

/** What the lab and its work cost; null when the scenario says nothing of money. */
export function readMoney(fields: Fields): ScenarioMoney | null {
  if (!fields.has('money')) {
    refusePrices(fields);
    return null;
  }
  if (fields.reading.isBroken(fields.pathOf('money'))) return null;
  const money = fields.group('money');
  const currency = readCurrency(money);
  const years = money.readOr('judged over', wholeYears(MOST_YEARS, '5 years'), '5 years');
  const isBought =
    money.readOr('equipment', choice('there already', 'to be bought'), 'there already') === 'to be bought';
  return {
    currency,
    years,
    interest: money.readOr('interest', interestRate, '8 %'),
    paybackYears: readPayback(money, years),
    otherPerYear: money.readOr('other costs', perYear(currency, '12000 per year'), '0 per year'),
    outsidePerJob: money.readOr(
      'outside per job',
      amount({ currency, expected: 'an amount for each job', example: '35', per: ['job'] }),
      '0',
    ),
    machines: readEquipment(fields, 'machines', currency, isBought),
    stations: readEquipment(fields, 'stations', currency, isBought),
    people: fields
      .names('people')
      .flatMap((name) => readHourlyCost(fields.group('people').group(name), name, currency) ?? []),
    materials: fields
      .names('materials')
      .map((name) => readMaterial(fields.group('materials').group(name), name, currency)),
    parts: fields.names('parts').map((name) => readPart(fields.group('parts').group(name), name, currency)),
  };
}

/** One message is enough for any number of prices without a currency. */
function refusePrices(fields: Fields): void {
  if (fields.reading.isMisspelt([])) return;
  const reason = 'the scenario says nothing of money.';
  const write = 'money: { currency: EUR } at the start of a line, or no prices';
  for (const [section, keys] of Object.entries(MONEY_KEYS)) {
    for (const name of fields.names(section)) {
      const group = fields.group(section).group(name);
      const key = keys.find((candidate) => group.has(candidate));
      if (key === undefined) continue;
      group.refuse(key, reason, write);
      return;
    }
  }
  fields.refuse('materials', reason, write);
}

function readCurrency(money: Fields): Currency {
  const code = money.need(
    'currency',
    currencyCode,
    '',
    'the currency of all amounts: three capital letters',
    'currency: EUR',
  );
  const { line } = money.reading.source.placeOf(
    money.reading.locate(money.pathOf('currency'), 'value').start,
  );
  return { code, line };
}

function readPayback(money: Fields, years: number): number {
  const usual = Math.min(3, years);
  const text = `${usual} ${usual === 1 ? 'year' : 'years'}`;
  const payback = money.readOr('payback within', yearsOf(MOST_YEARS, '3 years'), text);
  if (payback > years && !money.reading.isInDoubt(money.path, 'judged over')) {
    money.report(
      'payback within',
      'value',
      `What comes back later than the ${years} years that are looked at is not known.`,
      `at most ${years} years`,
      `${years} years, or a longer time at "judged over"`,
    );
  }
  return payback;
}

function readEquipment(
  fields: Fields,
  section: 'machines' | 'stations',
  currency: Currency,
  isBought: boolean,
): EquipmentCost[] {
  return fields.names(section).map((name) => {
    const group = fields.group(section).group(name);
    const price = group.need(
      'price',
      amount({ currency, expected: 'what one of them costs; 0 for what costs nothing', example: '3200' }),
      0,
      `what one of them costs${currency.code === '' ? '' : `, in ${currency.code}`}; 0 for what costs nothing`,
      'price: 3200',
    );
    const count = group.node('count');
    const there = count?.kind === 'scalar' && /^\d+$/.test(count.text) ? count.text : '1';
    const residualValue = group.readOr(
      'worth at the end',
      amount({ currency, expected: 'an amount', example: '500' }),
      '0',
    );
    if (residualValue > price && group.has('price') && !group.reading.isInDoubt(group.path, 'price')) {
      group.report(
        'worth at the end',
        'value',
        `"${name}" would be worth more at the end than it cost.`,
        `at most ${price}`,
        String(price),
      );
    }
    const weeks = (key: string): number => group.readOr(key, weeksOf('6 weeks'), '0 weeks');
    return {
      group: name,
      price,
      lifeYears: group.readOr('life', yearsOf(100, '5 years'), '5 years'),
      residualValue,
      yearlyCost: group.readOr('yearly cost', yearlyCost(currency), '8 % of the price')(price),
      owned: group.readOr('owned', wholeNumber(0, '1', MOST_ALIKE), isBought ? '0' : there),
      leadWeeks: weeks('delivery') + weeks('commissioning'),
      rampUpWeeks: weeks('ramp-up'),
    };
  });
}

function readHourlyCost(group: Fields, name: string, currency: Currency): PeopleCost {
  return {
    group: name,
    perHour: group.need(
      'hourly cost',
      amount({ currency, expected: 'an amount for an hour', example: '41', per: ['hour', 'h'] }),
      0,
      'what an hour of one of them costs, with all that comes on top of wages; 0 where it costs nothing',
      'hourly cost: 41',
    ),
    overtimeSupplement: group.readOr('overtime', share(300), '25 %'),
  };
}

function readMaterial(group: Fields, name: string, currency: Currency): ScenarioMaterialCost {
  if (!group.has('price')) group.missing('price', 'what it costs', 'price: 28 per kg');
  return {
    material: name,
    price: group.read('price', materialPrice(currency)) ?? null,
    density: group.read('density', density) ?? null,
    waste: group.readOr('waste', share(500), '0 %'),
  };
}

function readPart(group: Fields, name: string, currency: Currency): PartCost {
  const perPiece = (example: string) =>
    amount({ currency, expected: 'an amount for one piece', example, per: ['part', 'piece'] });
  return {
    part: name,
    material: group.read('material cost', perPiece('1.20')) ?? null,
    outside: group.read('price outside', perPiece('14.50')) ?? null,
  };
}
