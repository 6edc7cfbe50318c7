import type { Estimate, Prediction } from './estimate.ts';
import { figureOf, formatNumber } from './figure.ts';

/** A narrow space at which no line ends, between groups of three digits. */
const THIN_SPACE = '\u202f';
const NO_BREAK = '\u00a0';

/** Decimals that amounts of a kind always show: cents of a part, none of a year. */
export const CENTS = 2;
export const WHOLE = 0;

/** `182 412 EUR`, `14.50 EUR`: an amount that is known. */
export function moneyText(amount: number, currency: string, decimals: number): string {
  return `${bareMoneyText(amount, decimals)}${NO_BREAK}${currency}`;
}

/** `182 412`, where the currency stands in a heading. */
export function bareMoneyText(amount: number, decimals: number): string {
  return grouped(formatNumber(amount, decimals));
}

/** `12.31 EUR (12.20 to 12.42)`: an estimated amount. */
export function moneyEstimateText(estimate: Estimate, currency: string, decimals: number): string {
  const { value, range } = moneyFigure(estimate, decimals);
  const words = `${value}${NO_BREAK}${currency}`;
  return range === null ? words : `${words} (${range})`;
}

/** `11.80 to 12.95 EUR`: what one period may bring. */
export function moneyRangeText(prediction: Prediction, currency: string, decimals: number): string {
  const { value, range } = moneyFigure(prediction, decimals);
  return `${range ?? value}${NO_BREAK}${currency}`;
}

/** The number and its interval as they are written, without the currency; no interval where rounding leaves none. */
export function moneyFigure(
  interval: { readonly value?: number; readonly low: number; readonly high: number },
  decimals: number,
): { readonly value: string; readonly range: string | null } {
  const { value, range } = figureOf(rounded(interval, decimals), 1, decimals);
  return {
    value: grouped(value),
    range: range === null ? null : `${grouped(range.low)} to ${grouped(range.high)}`,
  };
}

/** Nobody counts more than the decimals of money, however narrow an interval is. */
function rounded(
  { value, low, high }: { readonly value?: number; readonly low: number; readonly high: number },
  decimals: number,
): { value?: number; low: number; high: number } {
  const round = (one: number): number => Number(one.toFixed(decimals));
  return { ...(value === undefined ? {} : { value: round(value) }), low: round(low), high: round(high) };
}

function grouped(text: string): string {
  const [whole = '', ...rest] = text.split('.');
  const sign = whole.startsWith('-') ? '-' : '';
  const digits = whole.slice(sign.length);
  const set = digits.length < 5 ? digits : digits.replace(/\B(?=(?:\d{3})+$)/g, THIN_SPACE);
  return [sign + set, ...rest].join('.');
}
