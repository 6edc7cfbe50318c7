import { formatPlain } from './format.ts';

const ROUND = [1, 2, 5];
const FINE = [1, 1.5, 2, 3, 4, 5, 7];
const FEWEST = 3;
/** Spare room at both ends, as a factor. */
const MARGIN = 1.14;
/** What nothing is drawn as on an axis that has no zero. */
const LEAST = 0.01;

/** An axis on which equal steps are equal factors. */
export interface LogAxis {
  readonly domain: readonly [number, number];
  readonly ticks: readonly number[];
}

function ticksIn(low: number, high: number, mantissas: readonly number[]): number[] {
  const ticks: number[] = [];
  for (let power = Math.floor(Math.log10(low)); power <= Math.ceil(Math.log10(high)); power++) {
    for (const mantissa of mantissas) {
      const tick = Number((mantissa * 10 ** power).toPrecision(3));
      if (tick >= low && tick <= high) ticks.push(tick);
    }
  }
  return ticks;
}

/**
 * A logarithmic axis for some values, with ticks at round numbers.
 *
 * @param values all that is drawn; nothing and less are drawn at a hundredth
 */
export function logAxis(values: readonly number[]): LogAxis {
  const drawn = values.map(aboveZero);
  const low = Math.min(...drawn) / MARGIN;
  const high = Math.max(low * 2, Math.max(...drawn) * MARGIN);
  const round = ticksIn(low, high, ROUND);
  return { domain: [low, high], ticks: round.length >= FEWEST ? round : ticksIn(low, high, FINE) };
}

/** A value as it may stand on a logarithmic axis. */
export function aboveZero(value: number): number {
  return Math.max(LEAST, value);
}

/** Where a value stands on an axis, 0 at its low end and 1 at its high end. */
export function shareOf({ domain: [low, high] }: LogAxis, value: number): number {
  return Math.log(aboveZero(value) / low) / Math.log(high / low);
}

/** The numbers at the ticks of an axis, as an expression that gives the label of `datum.value`. */
export function logLabels({ ticks }: LogAxis): string {
  return `[${ticks.map((tick) => `'${formatPlain(tick)}'`).join(',')}][indexof([${ticks.join(',')}], datum.value)]`;
}
