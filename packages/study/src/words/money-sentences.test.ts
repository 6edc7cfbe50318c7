import type { Estimate, Money } from '@buildweek/results';
import { describe, expect, it } from 'vitest';
import { moneySentences } from './money-sentences.ts';

function estimate(value: number, half: number): Estimate {
  return { kind: 'estimate', value, low: value - half, high: value + half, level: 0.95, replications: 100 };
}

const line = (perYear: number) => ({
  perYear: estimate(perYear, 0),
  perPart: estimate(perYear / 1000, 0.2),
  perJob: estimate(perYear / 100, 1),
});
const money: Money = {
  currency: 'EUR',
  committed: { perYear: 9000, equipment: [], people: [], otherPerYear: 0 },
  purchases: [{ group: 'resin', count: 2, amount: 6400, leadWeeks: 4 }],
  costs: [
    { kind: 'people', ...line(9000) },
    { kind: 'material', ...line(3000) },
  ],
  total: line(12_000),
  perPartOnePeriod: { kind: 'refused', reason: '' },
  repeats: line(0),
  case: {
    kind: 'compared',
    years: 5,
    interest: 0.08,
    paybackWithinYears: 2.5,
    outsidePerYear: estimate(15_000, 100),
    savedPerYear: estimate(3000, 80),
    netPresentValue: estimate(5578, 320),
    paybackYears: estimate(2.1, 0.1),
    paidBackInTime: { ...estimate(0.9, 0.06), high: 0.95 },
    internalRate: estimate(0.38, 0.02),
  },
  notContained: [],
};
const told = (more: Partial<Money> = {}): string[] =>
  moneySentences({ ...money, ...more }).map((sentence) => sentence.replaceAll(/[\u00a0\u202f]/g, ' '));

describe('money in sentences', () => {
  it('says what a part costs and what the lab is worth', () => {
    expect(told()).toEqual([
      'A finished part costs 12.00 EUR (11.80 to 12.20), and the lab 12 000 EUR a year. 75 % of that is people.',
      'The same parts made outside would cost 15 000 EUR (14 900 to 15 100) a year; once the lab stands, it saves 3000 EUR (2920 to 3080) of that. ' +
        'Over 5 years at 8 % interest its net present value is 5578 EUR (5258 to 5898), purchases of 6400 EUR taken off. ' +
        'It has paid for itself after 2.1 (2.0 to 2.2) years; within 2.5 years in 90 % (84 to 95) of the replications.',
    ]);
  });

  it('says plainly that the lab costs more than sending out', () => {
    if (money.case.kind !== 'compared') throw new Error('The case compares.');
    const dear = {
      ...money.case,
      savedPerYear: estimate(-2000, 80),
      netPresentValue: estimate(-14_000, 300),
    };
    expect(told({ case: dear })[1]).toBe(
      'The same parts made outside would cost 15 000 EUR (14 900 to 15 100) a year; the lab costs 2000 EUR (1920 to 2080) more, purchases not counted. ' +
        'Over 5 years at 8 % interest its net present value is -14 000 EUR (-14 300 to -13 700), purchases of 6400 EUR taken off.',
    );
  });

  it('says why it may never pay back, and nothing of payback where nothing is bought', () => {
    if (money.case.kind !== 'compared') throw new Error('The case compares.');
    const reason = 'In 41 of 100 replications it does not pay back within 5 years.';
    const open = { ...money.case, paybackYears: { kind: 'never', reason } as const };
    expect(told({ case: open })[1]).toContain(`taken off. ${reason}`);
    const refused = { kind: 'refused', reason: 'Nothing has to be bought.' } as const;
    const owned = { ...money.case, paybackYears: refused, paidBackInTime: refused };
    expect(told({ case: owned, purchases: [] })[1]).toMatch(/is 5578 EUR \(5258 to 5898\)\.$/);
  });

  it('is silent where nothing is said of money', () => {
    expect(moneySentences(null)).toEqual([]);
    expect(told({ case: { kind: 'not compared', reason: 'no prices' } })).toHaveLength(1);
  });
});
