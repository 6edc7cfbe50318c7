import { figureOf, type Spread } from '@buildweek/results';
import { formatCount, HOURS, type Unit } from '../format.ts';

export const MINUTES: Unit = { size: 1, one: 'min', many: 'min', leastDecimals: 0 };

const NO_BREAK = '\u00a0';
const MINUTES_PER_HOUR = 60;
/** Hours from which on no decimals are told. */
const WHOLE_FROM = 99.95;

/** A typical value and its spread, each as it is written; no spread where rounding leaves nothing of it. */
export function spreadFigure(spread: Spread, unit: Unit): { value: string; range: string | null } {
  const { value, range } = figureOf(
    { value: spread.typical, low: spread.low, high: spread.high },
    unit.size,
    unit.leastDecimals,
  );
  return { value, range: range === null ? null : `${range.low} to ${range.high}` };
}

/** "7.4 h (6.9 to 8.6)". */
export function formatSpread(spread: Spread, unit: Unit): string {
  const { value, range } = spreadFigure(spread, unit);
  return `${value}${NO_BREAK}${unit.many}${range === null ? '' : ` (${range})`}`;
}

/** A length of time as people say it: "25 min" below an hour, "4.2 h" above, whole hours from a hundred on. */
export function formatLength(hours: number): string {
  const minutes = Math.round(hours * MINUTES_PER_HOUR);
  if (minutes < MINUTES_PER_HOUR) return `${minutes}${NO_BREAK}${MINUTES.many}`;
  const figure = hours < WHOLE_FROM ? hours.toFixed(1).replace(/\.0$/, '') : formatCount(Math.round(hours));
  return `${figure}${NO_BREAK}${HOURS.many}`;
}

/** "1 piece", "20 pieces". */
export function formatPieces(quantity: number): string {
  return `${quantity}${NO_BREAK}${quantity === 1 ? 'piece' : 'pieces'}`;
}
