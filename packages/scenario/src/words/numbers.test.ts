import { describe, expect, it } from 'vitest';
import { refusal } from '../fixture/refusal.ts';
import { count, growthPerMonth, largestCount, meanCount, perWeek, share, wholeNumber } from './numbers.ts';

describe('a count', () => {
  it('"1 to 12" is uniform over whole numbers', () => {
    expect(count('1 to 12')).toEqual({ kind: 'uniform', low: 1, high: 12 });
    expect(count('3')).toEqual({ kind: 'fixed', value: 3 });
    expect(count('3 to 3')).toEqual({ kind: 'fixed', value: 3 });
    expect(count('geometric mean 3')).toEqual({ kind: 'geometric', mean: 3 });
  });

  it.each([
    ['0', '0 is not a whole number from 1 up.', '1 to 12'],
    ['2.5', '2.5 is not a whole number from 1 up.', '3'],
    ['12 to 1', 'The low end (12) is above the high end (1).', '1 to 12'],
    [
      '1 to 12, usually 3',
      'Counts have no usual value: each number of the range is equally likely.',
      '1 to 12',
    ],
    ['geometric mean 0.5', 'The mean of numbers from 1 up cannot be below 1.', '1 to 12'],
    ['a few', '"a" is not a number.', '1 to 12'],
  ])('refuses "%s"', (text, message, write) => {
    expect(refusal(count, text)).toMatchObject({ message, write });
  });

  it('knows its mean and its largest value', () => {
    const list = { kind: 'list', values: [1, 2, 6] } as const;
    expect([count('4'), count('1 to 12'), count('geometric mean 3'), list].map(meanCount)).toEqual([
      4, 6.5, 3, 3,
    ]);
    expect([count('4'), count('1 to 12'), count('geometric mean 3'), list].map(largestCount)).toEqual([
      4,
      12,
      Number.POSITIVE_INFINITY,
      6,
    ]);
  });
});

describe('a rate', () => {
  it('is per week, whatever it is given per', () => {
    expect(perWeek('14 per week')).toBe(14);
    expect(perWeek('2 per day')).toBe(14);
    expect(perWeek('0.8 per hour')).toBeCloseTo(134.4, 12);
    // A month is a twelfth of 365.25 days.
    expect(perWeek('10 per month')).toBeCloseTo((10 * 84) / 365.25, 12);
  });

  it.each([
    ['14', '"14" does not say how often.', '14 per week'],
    ['14 per fortnight', '"per fortnight" is not possible here.', '14 per week'],
    ['0 per week', 'Nothing arrives at this rate; leave the demand out instead.', '14 per week'],
    ['1,5 per week', '"1,5" has a comma inside a number.', '1.5 per week'],
  ])('refuses "%s"', (text, message, write) => {
    expect(refusal(perWeek, text)).toMatchObject({ message, write });
  });
});

describe('a share', () => {
  it('is given in per cent', () => {
    expect(share(100)('15 %')).toBeCloseTo(0.15, 15);
    expect(share(100)('100%')).toBe(1);
  });

  it.each([
    ['0.15', '"0.15" has no % behind it.', '15 %'],
    ['15', '"15" has no % behind it.', '15 %'],
    ['120 %', '120 % is more than there can be.', '100 %'],
    ['-5 %', 'It cannot be negative.', '15 %'],
    ['15 min', '"min" measures a time, and a share is needed here.', '15 %'],
  ])('refuses "%s"', (text, message, write) => {
    expect(refusal(share(100), text)).toMatchObject({ message, write });
  });

  it('can be required to stay below its end', () => {
    expect(refusal(share(100, true), '100 %').write).toBe('99 %');
  });
});

describe('growth', () => {
  it('is compound, per month', () => {
    expect(growthPerMonth('2 % per month')).toBeCloseTo(0.02, 15);
    expect(growthPerMonth('-2 % per month')).toBeCloseTo(-0.02, 15);
    expect((1 + growthPerMonth('27 % per year')) ** 12).toBeCloseTo(1.27, 12);
  });

  it('says per what, in per cent', () => {
    expect(refusal(growthPerMonth, '2 %').write).toBe('2 % per month');
    expect(refusal(growthPerMonth, '2 per month').write).toBe('2 % per month');
    expect(refusal(growthPerMonth, '2 % per week').message).toBe('"per week" is not possible here.');
    expect(refusal(growthPerMonth, '-100 % per month').message).toBe('Demand cannot shrink by all there is.');
  });
});

describe('a whole number', () => {
  it('has a least value', () => {
    const wording = wholeNumber(1, '3');
    expect(wording('7')).toBe(7);
    expect(refusal(wording, '0')).toMatchObject({
      message: '"0" is not a whole number from 1 up.',
      write: '3',
    });
    expect(refusal(wording, '1.6').write).toBe('2');
    expect(refusal(wording, 'two').write).toBe('3');
    expect(refusal(wholeNumber(1, '3', 10_000), '1000000000')).toMatchObject({
      message: '1000000000 is more than this program is made for.',
      write: '10000',
    });
  });
});
