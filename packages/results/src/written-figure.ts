import { type Figure, figureOf } from './figure.ts';
import type { WrittenUnit } from './measure-unit-words.ts';
import { moneyFigure } from './money-words.ts';

/** A number with its interval in the unit of a measure; of money never more than its decimals, its thousands set apart. */
export function writtenFigure(
  interval: { readonly value?: number; readonly low: number; readonly high: number },
  { size, leastDecimals, isMoney }: WrittenUnit,
): Figure {
  if (!isMoney) return figureOf(interval, size, leastDecimals);
  const { value, range } = moneyFigure(interval, leastDecimals);
  const [low, high] = range?.split(' to ') ?? [];
  return { value, range: low === undefined || high === undefined ? null : { low, high } };
}

/** `4.1 (3.9 to 4.3)`, where the unit is said already. */
export function writtenText(
  interval: { readonly value?: number; readonly low: number; readonly high: number },
  unit: WrittenUnit,
): string {
  const { value, range } = writtenFigure(interval, unit);
  return range === null ? value : `${value} (${range.low} to ${range.high})`;
}

/** `+0.3 (0.1 to 0.5)`: a change; what is written as 0 has no sign. */
export function signedText(
  interval: { readonly value: number; readonly low: number; readonly high: number },
  unit: WrittenUnit,
): string {
  const text = writtenText(interval, unit);
  return interval.value > 0 && Number.parseFloat(text) > 0 ? `+${text}` : text;
}
