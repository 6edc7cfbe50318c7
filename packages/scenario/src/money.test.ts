import { describe, expect, it } from 'vitest';
import { EVERYTHING } from './fixture/everything.ts';
import { editedShapes, readShaped } from './fixture/shaped-lab.ts';
import { readScenario } from './read-scenario.ts';

describe('money of a scenario', () => {
  const reading = readScenario(EVERYTHING, 'everything.yaml');
  const economics = reading.kind === 'scenario' ? reading.economics : null;

  it('is read with its rules', () => {
    expect(economics).toMatchObject({
      currency: 'EUR',
      years: 6,
      interest: 0.06,
      paybackYears: 2.5,
      otherPerYear: 12_000,
      outsidePerJob: 35,
    });
  });

  it('gives the costs of machines and stations, with what is usual where nothing is said', () => {
    const bought = { residualValue: 0, owned: 0, leadWeeks: 0, rampUpWeeks: 0, lifeYears: 5 };
    expect(economics?.equipment).toEqual([
      {
        group: 'powder',
        price: 40_000,
        lifeYears: 8,
        residualValue: 2000,
        yearlyCost: 4000,
        owned: 1,
        leadWeeks: 7,
        rampUpWeeks: 4,
      },
      { group: 'unpacker', ...bought, price: 900, yearlyCost: 72 },
      { group: 'blaster', ...bought, price: 1500, yearlyCost: 20 },
      { group: 'oven', ...bought, price: 700, yearlyCost: 56, owned: 1 },
    ]);
  });

  it('takes everything as owned unless equipment is to be bought', () => {
    const there = readScenario(EVERYTHING.replace('  equipment: to be bought\n', ''), 'lab.yaml');
    const costs = there.kind === 'scenario' ? there.economics?.equipment : [];
    expect(costs?.map(({ owned }) => owned)).toEqual([1, 2, 1, 1]);
  });

  it('gives hours, materials and parts', () => {
    expect(economics?.people).toEqual([
      { group: 'technicians', perHour: 41, overtimeSupplement: 0.3 },
      { group: 'guard', perHour: 30, overtimeSupplement: 0.25 },
      { group: 'robot', perHour: 0, overtimeSupplement: 0.25 },
    ]);
    expect(economics?.materials).toEqual([
      // 90 for a litre of 0.9 kg.
      { material: 'white', pricePerKilogram: 100, density: 0.9, waste: 0.12 },
      { material: 'black', pricePerKilogram: 55, density: null, waste: 0 },
    ]);
    expect(economics?.parts).toEqual([
      { part: 'cap', material: 1.2, outside: 14.5 },
      { part: 'box', material: 3, outside: 40 },
      { part: 'pin', material: 0.4, outside: null },
    ]);
  });

  it('lists what is usual as such', () => {
    const of = (what: string) =>
      reading.kind === 'scenario'
        ? reading.assumptions.find((assumption) => assumption.what === what)
        : undefined;
    expect(of('stations / unpacker / yearly cost')).toMatchObject({
      value: '8 % of the price',
      source: 'default of the program',
    });
    expect(of('stations / unpacker / owned')).toMatchObject({ value: '0' });
    expect(of('money / interest')).toMatchObject({ value: '6 % per year', source: 'stated in the scenario' });
  });

  it('needs nothing where the scenario says nothing of money', () => {
    const text = EVERYTHING.replace(/^money:\n(?: {2}.*\n)*/m, '').replace(
      / {2}- (?:budget|cost per part) .*\n/g,
      '',
    );
    expect(readScenario(text, 'lab.yaml')).toMatchObject({
      problems: [
        { message: '"price" has no meaning here: the scenario says nothing of money.', found: 'price' },
      ],
    });
  });
});

/** The lab of shapes with its prices; parts say no material and so are all of "standard". */
const PRICED = editedShapes(
  'demand:\n',
  'money: { currency: CHF }\nmaterials:\n  standard: { price: 28 per kg, density: 1.1 g/cm3 }\ndemand:\n',
)
  .replace('count: 2, hours: day', 'count: 2, hourly cost: 41, hours: day')
  .replace('    process: MEX\n', '    process: MEX\n    price: 900\n')
  .replace('    process: PBF\n', '    process: PBF\n    price: 90000\n')
  .replace('vat: { ', 'vat: { price: 20000, ')
  .replace('resin: { class', 'resin: { price: 4000, class')
  .replace('paste: { ', 'paste: { price: 4000, ')
  .replace('basket: { ', 'basket: { price: 500, ')
  .replace('cure: { class', 'cure: { price: 500, class');

describe('material of parts with a shape', () => {
  it('follows from the price of their material', () => {
    const reading = readShaped(PRICED);
    expect(reading).toMatchObject({ kind: 'scenario', warnings: [] });
    expect(reading.kind === 'scenario' ? reading.economics?.parts : []).toContainEqual({
      part: 'ring',
      material: null,
      outside: null,
    });
  });

  it.each([
    ['density: 1.1 g/cm3', '', '"density" is missing in "standard": its weight in a part is not known.'],
    ['clip: { route', 'clip: { material: nylon, route', 'The material "nylon" of "clip" has no price.'],
  ])('needs a price and mostly a density: %s -> %s', (from, to, message) => {
    expect(PRICED).toContain(from);
    expect(readShaped(PRICED.replace(from, to))).toMatchObject({ problems: [{ message }] });
  });

  it('needs no density of powder, which its machines state', () => {
    const text = PRICED.replace('clip: { route', 'clip: { material: nylon, route').replace(
      'materials:\n',
      'materials:\n  nylon: { price: 60 per kg }\n',
    );
    expect(readShaped(text)).toMatchObject({ kind: 'scenario', warnings: [] });
  });
});
