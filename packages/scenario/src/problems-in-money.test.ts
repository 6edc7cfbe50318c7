import { describe, expect, it } from 'vitest';
import { EVERYTHING } from './fixture/everything.ts';
import { problemsOf } from './fixture/plain-lab.ts';

/** What is changed in the lab that uses every key, the word that is pointed at, what is said, and what to write. */
const MISTAKES: readonly (readonly [from: string, to: string, at: string, message: string, write: string])[] =
  [
    ['price: 40000 EUR', 'price: -40000', '-40000', 'It cannot be negative.', 'for example: 3200'],
    ['price: 40000 EUR', 'price: 40,5', '40,5', '"40,5" has a comma inside a number.', '40.5'],
    ['    price: 40000 EUR\n', '', 'powder', '"price" is missing in "powder".', 'price: 3200'],
    [
      'price: 40000 EUR',
      'price: 40000 USD',
      '40000 USD',
      'This is in USD, and line 74 says that money is in EUR.',
      '40000 EUR',
    ],
    ['life: 8 years', 'life: 0 years', '0 years', 'It cannot be zero.', 'for example: 5 years'],
    ['life: 8 years', 'life: 8', '8', '"8" has no unit.', '8 years'],
    [
      'worth at the end: 2000',
      'worth at the end: 50000',
      '50000',
      '"powder" would be worth more at the end than it cost.',
      '40000',
    ],
    [
      'interest: 6 % per year',
      'interest: 300 %',
      '300 %',
      '300 % of interest in a year is more than this program is made for.',
      'for example: 8 %',
    ],
    ['interest: 6 % per year', 'interest: 0.06', '0.06', '"0.06" has no % behind it.', '6 %'],
    [
      'judged over: 6 years',
      'judged over: 18 months',
      '18 months',
      '18 months is no whole number of years.',
      'for example: 2 years',
    ],
    [
      'payback within: 30 months',
      'payback within: 7 years',
      '7 years',
      'What comes back later than the 6 years that are looked at is not known.',
      '6 years, or a longer time at "judged over"',
    ],
    [
      'other costs: 1000 per month',
      'other costs: 1000',
      '1000',
      '"1000" does not say in which time.',
      '1000 per year',
    ],
    ['currency: EUR', 'currency: eur', 'eur', '"eur" is not the code of a currency.', 'EUR'],
    ['  currency: EUR\n', '', 'money', '"currency" is missing in "money".', 'currency: EUR'],
    [
      'hourly cost: 30',
      'hourly cost: 30 per day',
      '30 per day',
      '"per day" is not possible here.',
      '30 per hour',
    ],
    [', hourly cost: 30', '', 'guard', '"hourly cost" is missing in "guard".', 'hourly cost: 41'],
    ['overtime: 30 %', 'overtime: 30', '30', '"30" has no % behind it.', '30 %'],
    ['price: 55/kg', 'price: 55', '55', '"55" does not say of how much.', '55 per kg'],
    ['price: 55/kg', 'price: 55 per m', '55 per m', '"per m" is not possible here.', '55 per kg'],
    [
      'material cost: 0.4',
      'settings: fine',
      'pin',
      'What the material of one "pin" costs is missing, and it has no shape from which it follows.',
      'material cost: 1.20',
    ],
    ['owned: 1\n', 'owned: 1.5\n', '1.5', '"1.5" is not a whole number from 0 up.', 'for example: 2'],
    [
      'yearly cost: 10 % of the price',
      'yearly cost: 110 % of the price',
      '110 %',
      '110 % of the price every year is more than a new one.',
      'for example: 8 % of the price',
    ],
    ['delivery: 6 weeks', 'delivery: 6', '6', '"6" has no unit.', '6 weeks'],
  ];

describe('a mistake in money', () => {
  it.each(MISTAKES)('is told once, at its place: %s -> %s', (from, to, at, message, write) => {
    expect(EVERYTHING).toContain(from);
    const problems = problemsOf(EVERYTHING.replace(from, () => to));
    expect(problems.map((problem) => problem.message)).toEqual([message]);
    expect(problems[0]).toMatchObject({ severity: 'error', write });
    const { sourceLine = '', column = 0 } = problems[0] ?? {};
    expect(sourceLine.slice(column - 1, column - 1 + at.length)).toBe(at);
  });

  it('in the name of a material is told as what no part is made of', () => {
    expect(problemsOf(EVERYTHING.replace('  black: { price: 55', '  blck: { price: 55'))).toMatchObject([
      { severity: 'warning', found: 'blck', message: 'No part is made of "blck".', write: 'black' },
    ]);
  });
});
