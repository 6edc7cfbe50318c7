import { describe, expect, it } from 'vitest';
import { bareMoneyText, CENTS, moneyEstimateText, moneyRangeText, moneyText, WHOLE } from './money-words.ts';

/** With plain spaces, which are easier to read. */
const plain = (text: string): string => text.replaceAll(/[\u00a0\u202f]/g, ' ');
const estimate = (value: number, low: number, high: number) =>
  ({ kind: 'estimate', value, low, high, level: 0.95, replications: 100 }) as const;

describe('amounts of money', () => {
  it('have cents or not, and their thousands apart from five digits on', () => {
    expect(plain(moneyText(14.5, 'EUR', CENTS))).toBe('14.50 EUR');
    expect(plain(moneyText(3200, 'EUR', WHOLE))).toBe('3200 EUR');
    expect(plain(moneyText(182_412.4, 'CHF', WHOLE))).toBe('182 412 CHF');
    expect(plain(bareMoneyText(-12_345.678, CENTS))).toBe('-12 345.68');
    expect(bareMoneyText(-0.3, WHOLE)).toBe('0');
  });

  it('have their interval behind them, where rounding leaves any of it', () => {
    expect(plain(moneyEstimateText(estimate(12.314, 12.2, 12.42), 'EUR', CENTS))).toBe(
      '12.31 EUR (12.20 to 12.42)',
    );
    expect(plain(moneyEstimateText(estimate(182_412.4, 181_000, 183_800), 'EUR', WHOLE))).toBe(
      '182 412 EUR (181 000 to 183 800)',
    );
    expect(plain(moneyEstimateText(estimate(1200, 1200, 1200), 'EUR', WHOLE))).toBe('1200 EUR');
    expect(plain(moneyEstimateText(estimate(1200.2, 1199.9, 1200.4), 'EUR', WHOLE))).toBe('1200 EUR');
  });

  it('are a range where one period may bring it', () => {
    const range = { kind: 'prediction', low: 11.8, high: 12.95, level: 0.95, replications: 100 } as const;
    expect(plain(moneyRangeText(range, 'EUR', CENTS))).toBe('11.80 to 12.95 EUR');
  });
});
