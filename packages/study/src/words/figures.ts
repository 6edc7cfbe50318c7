import { type Estimate, figureOf, formatNumber, type Prediction } from '@buildweek/results';

/** A unit in which lead times are told. */
export interface TimeUnit {
  /** Hours in it. */
  readonly size: number;
  readonly one: string;
  readonly many: string;
}

/** Days are 24 hours by the clock. */
export const DAYS: TimeUnit = { size: 24, one: 'day', many: 'days' };
export const HOURS: TimeUnit = { size: 1, one: 'hour', many: 'hours' };

const LEAST_DECIMALS = 1;
const PERCENT = 0.01;

/** `2.9 days (2.7 to 3.1)`. */
export function durationWords(estimate: Estimate, unit: TimeUnit): string {
  const figure = figureOf(estimate, unit.size, LEAST_DECIMALS);
  const name = Number(figure.value) === 1 ? unit.one : unit.many;
  return withRange(`${figure.value} ${name}`, figure.range);
}

/** `2.1 to 3.8 days`. */
export function rangeWords(interval: Prediction, unit: TimeUnit): string {
  return `${endsWords(interval, unit.size, LEAST_DECIMALS)} ${unit.many}`;
}

/** `0.6 (0.5 to 0.7)`, where the unit is said already. */
export function bareDurationWords(estimate: Estimate, unit: TimeUnit): string {
  return numberWords(estimate, unit.size, LEAST_DECIMALS);
}

/** A share that is stated, in per cent without the dust of binary fractions: 7 for 0.07. */
export function percentOf(share: number): number {
  return Number((share / PERCENT).toPrecision(4));
}

/** `93 % (91 to 94)`. */
export function shareWords(estimate: Estimate): string {
  const figure = figureOf(estimate, PERCENT, 0);
  return withRange(`${figure.value} %`, figure.range);
}

/** `85 to 98 %`. */
export function shareRangeWords(interval: Prediction): string {
  return `${endsWords(interval, PERCENT, 0)} %`;
}

/** `75 (70 to 80)`. */
export function countWords(estimate: Estimate): string {
  return numberWords(estimate, 1, 0);
}

/** A share in per cent, whole, with one decimal below ten and close to a hundred. */
export function percent(share: number): string {
  const value = 100 * share;
  return formatNumber(value, (value !== 0 && value < 10) || (value > 99 && value < 100) ? 1 : 0);
}

function numberWords(estimate: Estimate, size: number, least: number): string {
  const figure = figureOf(estimate, size, least);
  return withRange(figure.value, figure.range);
}

function withRange(words: string, range: { readonly low: string; readonly high: string } | null): string {
  return range === null ? words : `${words} (${range.low} to ${range.high})`;
}

function endsWords(interval: Prediction, size: number, least: number): string {
  const { value, range } = figureOf(interval, size, least);
  return range === null ? value : `${range.low} to ${range.high}`;
}

/** The words as they stand at the beginning of a sentence. */
export function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
