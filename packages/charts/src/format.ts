import {
  type Estimate,
  type EstimateOrRefused,
  type Figure,
  figureOf,
  formatNumber,
  type Prediction,
  type PredictionOrRefused,
} from '@buildweek/results';

/** Hours in a day by the clock; lead times are told in such days. */
export const HOURS_PER_DAY = 24;
export const HOURS_PER_WEEK = 7 * HOURS_PER_DAY;

/** A space at which no line ends, between a number and its unit. */
const NO_BREAK = '\u00a0';
const THIN_SPACE = '\u202f';

/** A unit in which a number is shown. */
export interface Unit {
  /** Base units in it. */
  readonly size: number;
  readonly one: string;
  readonly many: string;
  /** Decimals that are always shown. */
  readonly leastDecimals: number;
}

export const DAYS: Unit = { size: HOURS_PER_DAY, one: 'day', many: 'days', leastDecimals: 1 };
export const HOURS: Unit = { size: 1, one: 'h', many: 'h', leastDecimals: 1 };
export const PERCENT: Unit = { size: 0.01, one: '%', many: '%', leastDecimals: 0 };
export const JOBS: Unit = { size: 1, one: 'job', many: 'jobs', leastDecimals: 0 };
export const PARTS: Unit = { size: 1, one: 'part', many: 'parts', leastDecimals: 0 };
/** Mean numbers of things at a time. */
export const AT_A_TIME: Unit = { size: 1, one: '', many: '', leastDecimals: 1 };
export const PLAIN: Unit = { size: 1, one: '', many: '', leastDecimals: 0 };

/** The same unit for a place that names it already, as the heading of a column. */
export function unnamed(unit: Unit): Unit {
  return { ...unit, one: '', many: '' };
}

/** A number for which no interval is at hand: three digits that count. */
export function formatPlain(value: number): string {
  if (value === 0) return '0';
  const size = Math.abs(value);
  if (size >= 100) return formatNumber(value, 0);
  if (size >= 10) return formatNumber(value, 1).replace(/\.0$/, '');
  return formatNumber(value, 2).replace(/\.?0+$/, '');
}

/** A whole number with its thousands set apart: "108 212". */
export function formatCount(count: number): string {
  return String(count).replace(/\B(?=(?:\d{3})+$)/g, THIN_SPACE);
}

/** A share as a whole percentage, or with one decimal below ten percent. */
export function formatShare(share: number): string {
  const percent = share * 100;
  return `${percent > 0 && percent < 9.95 ? formatNumber(percent, 1) : formatNumber(percent, 0)}${NO_BREAK}%`;
}

/** "95 %", and "99.5 %" for a confidence level that is no whole percentage. */
export function formatLevel(level: number): string {
  return `${Number((level * 100).toPrecision(4))}${NO_BREAK}%`;
}

function withUnit(text: string, unit: Unit): string {
  if (unit.many === '') return text;
  return `${text}${NO_BREAK}${Number(text) === 1 ? unit.one : unit.many}`;
}

function figureIn(interval: Estimate | Prediction, unit: Unit): Figure {
  return figureOf(interval, unit.size, unit.leastDecimals);
}

/** "4.1 days". */
export function formatValue(estimate: Estimate, unit: Unit): string {
  return withUnit(figureIn(estimate, unit).value, unit);
}

/** "3.9 to 4.3"; null where rounding leaves nothing of the interval. */
export function formatRange(estimate: Estimate, unit: Unit): string | null {
  const { range } = figureIn(estimate, unit);
  return range === null ? null : `${range.low} to ${range.high}`;
}

/** "3.9 to 4.3"; one number where both ends come out alike. */
export function formatInterval(prediction: Prediction, unit: Unit): string {
  const { value, range } = figureIn(prediction, unit);
  return range === null ? value : `${range.low} to ${range.high}`;
}

/** "4.1 days (3.9 to 4.3)". */
export function formatEstimate(estimate: Estimate, unit: Unit): string {
  const range = formatRange(estimate, unit);
  return `${formatValue(estimate, unit)}${range === null ? '' : ` (${range})`}`;
}

/** The estimate, or in plain words why there is none. */
export function formatOrReason(estimate: EstimateOrRefused | PredictionOrRefused, unit: Unit): string {
  switch (estimate.kind) {
    case 'estimate':
      return formatEstimate(estimate, unit);
    case 'prediction':
      return formatInterval(estimate, unit);
    case 'refused':
      return `not given: ${estimate.reason}`;
    case 'never':
      return `beyond the end of the plan: ${estimate.reason}`;
  }
}

const TURNS_DIRECTION = /[\u0590-\u08ff\u200e\u200f\u202a-\u202e\u2066-\u2069\ufb1d-\ufdff\ufe70-\ufefc]/;

/**
 * A name that keeps its direction of writing to itself, so that the words around it stay in their order.
 * Source: Unicode Standard Annex 9, explicit directional isolates.
 */
export function isolate(name: string): string {
  return TURNS_DIRECTION.test(name) ? `\u2068${name}\u2069` : name;
}

/** A name cut to a length that fits a title; what is cut off is marked. */
export function shorten(name: string, length = 48): string {
  const letters = Array.from(name);
  return isolate(letters.length <= length ? name : `${letters.slice(0, length - 1).join('')}…`);
}

/** No line ends between a number and its per cent sign. */
export function keptTogether(sentence: string): string {
  return sentence.replace(/(\d) %/g, `$1${NO_BREAK}%`);
}

const WEEKDAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'] as const;

/** "Monday 07:00" for hour 7 of the week. */
export function formatHourOfWeek(hour: number): string {
  const day = WEEKDAYS[Math.floor(hour / HOURS_PER_DAY) % 7] ?? '';
  return `${day} ${String(hour % HOURS_PER_DAY).padStart(2, '0')}:00`;
}

const SHARES: Readonly<Record<string, string>> = {
  '0.5': 'Half of',
  '0.8': 'Four of five',
  '0.9': 'Nine of ten',
  '0.95': 'Nineteen of twenty',
};

/** "Nine of ten" for 0.9; "70 % of" for a share without words of its own. */
export function shareInWords(share: number): string {
  return SHARES[String(share)] ?? `${formatNumber(share * 100, 0)} % of`;
}
