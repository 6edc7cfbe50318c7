import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { refusal } from '../fixture/refusal.ts';
import { said } from './mended.ts';
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
} from './money.ts';
import type { Wording } from './wording-error.ts';

const EUR: Currency = { code: 'EUR', line: 7 };
const price = amount({ currency: EUR, expected: 'an amount', example: '3200' });
const hourly = amount({
  currency: EUR,
  expected: 'an amount for an hour',
  example: '41',
  per: ['hour', 'h'],
});

describe('words of money', () => {
  it.each([
    ['3200', 3200],
    ['3200 EUR', 3200],
    ['EUR 3200', 3200],
    ['3200 €', 3200],
    ['€14.50', 14.5],
    ['0', 0],
  ])('reads an amount: %s', (text, value) => {
    expect(price(text)).toBe(value);
  });

  it.each([
    ['41 per hour', 41],
    ['41 EUR/h', 41],
    ['41', 41],
  ])('reads what an hour costs: %s', (text, value) => {
    expect(hourly(text)).toBe(value);
  });

  it('reads money in a year, and a share of a price', () => {
    expect(perYear(EUR, '12000 per year')('1000 EUR per month')).toBe(12_000);
    expect(yearlyCost(EUR)('8 % of the price')(5000)).toBe(400);
    expect(yearlyCost(EUR)('8 %')(5000)).toBe(400);
    expect(yearlyCost(EUR)('250 EUR per year')(5000)).toBe(250);
  });

  it('reads prices of materials by weight and by volume', () => {
    const read = materialPrice(EUR);
    expect(read('28 per kg')).toEqual({ perKilogram: 28 });
    expect(read('0.03 EUR/g')).toEqual({ perKilogram: 30 });
    expect(read('90 per litre')).toEqual({ perCubicCentimetre: 0.09 });
  });

  it('reads times and interest', () => {
    expect(yearsOf(50, '5 years')('18 months')).toBeCloseTo(1.5, 12);
    expect(wholeYears(50, '5 years')('60 months')).toBe(5);
    expect(weeksOf('6 weeks')('10 days')).toBeCloseTo(10 / 7, 12);
    expect(weeksOf('6 weeks')('0 weeks')).toBe(0);
    expect(interestRate('8 % per year')).toBe(0.08);
  });

  it.each<[Wording<unknown>, string, string]>([
    [price, '3200 USD', 'This is in USD, and line 7 says that money is in EUR.'],
    [price, '$3200', 'This is in USD, and line 7 says that money is in EUR.'],
    [price, '-5', 'It cannot be negative.'],
    [price, `${10 ** 13}`, 'This is more money than this program is made for.'],
    [price, '41 per hour', '"per hour" is not understood here.'],
    [currencyCode, 'euro', '"euro" is not the code of a currency.'],
    [interestRate, '60 %', '60 % of interest in a year is more than this program is made for.'],
    [yearsOf(50, '5 years'), '60 years', '60 years is more than this program is made for.'],
    [weeksOf('6 weeks'), '6 years', '6 years is more than this program is made for.'],
  ])('refuses: %s %s', (wording, text, message) => {
    expect(refusal(wording, text).message).toBe(message);
  });

  it('takes any currency where that of the scenario is not known', () => {
    expect(amount({ currency: { code: '', line: 1 }, expected: 'an amount', example: '1' })('5 USD')).toBe(5);
  });

  it('proposes what it accepts itself, whatever is written', () => {
    const wordings: Wording<unknown>[] = [price, hourly, perYear(EUR, '12000 per year'), materialPrice(EUR)];
    fc.assert(
      fc.property(
        fc.constantFrom(...wordings),
        fc.array(fc.constantFrom('3200', 'USD', 'per', 'kg', 'year', '/', ',', '-', 'm', '8 %', 'x'), {
          maxLength: 5,
        }),
        (wording, words) => {
          try {
            said(words.join(' '), wording);
          } catch {
            const { write } = refusal((text) => said(text, wording), words.join(' '));
            expect(() => wording(write.replace(/^for example: /, ''))).not.toThrow();
          }
        },
      ),
    );
  });
});
