import { CENTS, WHOLE } from './money-words.ts';
import type { MeasureUnit } from './plan-measure.ts';

/** The unit in which a measure is written. */
export interface WrittenUnit {
  /** Base units in it. */
  readonly size: number;
  readonly one: string;
  readonly many: string;
  /** Decimals that are always shown. */
  readonly leastDecimals: number;
  /** Whether it is an amount of money, which is written in a way of its own. */
  readonly isMoney: boolean;
}

const HOURS_PER_DAY = 24;

/**
 * How a measure is written: hours in days of 24 hours by the clock where one of the values is that long, shares in per
 * cent, money in the currency of the scenario.
 *
 * @param values all that are written beside each other, in base units
 * @param currency null: the scenario speaks of no money
 */
export function writtenUnit(
  unit: MeasureUnit,
  values: readonly number[],
  currency: string | null,
): WrittenUnit {
  const money = currency ?? 'money';
  const plain = (many: string, leastDecimals: number, one = many): WrittenUnit => ({
    size: 1,
    one,
    many,
    leastDecimals,
    isMoney: false,
  });
  const amount = (words: string, leastDecimals: number): WrittenUnit => ({
    ...plain(words, leastDecimals),
    isMoney: true,
  });
  switch (unit) {
    case 'hours':
      return values.some((value) => Math.abs(value) >= HOURS_PER_DAY)
        ? { size: HOURS_PER_DAY, one: 'day', many: 'days', leastDecimals: 1, isMoney: false }
        : plain('hours', 1, 'hour');
    case 'share':
      return { size: 0.01, one: '%', many: '%', leastDecimals: 0, isMoney: false };
    case 'jobs':
      return plain('jobs', 1, 'job');
    case 'pieces per week':
      return plain('pieces a week', 0);
    case 'hours per week':
      return plain('hours a week', 1);
    case 'money':
      return amount(money, WHOLE);
    case 'money per year':
      return amount(`${money} a year`, WHOLE);
    case 'money per piece':
      return amount(`${money} a piece`, CENTS);
  }
}
