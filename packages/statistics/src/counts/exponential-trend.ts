import { inverseNormal } from '@buildweek/numbers';
import { root } from '../durations/maximize.ts';
import type { Interval } from '../interval.ts';

/** Rates that grow or shrink by a constant share. */
export interface ExponentialTrend {
  /** Natural logarithm of the growth over the whole period. */
  readonly growth: Interval;
  /** The rate at the end of the period over the average rate: its limits are those of the growth. */
  readonly endOverMean: Interval;
}

const LARGEST_GROWTH = 50;

/**
 * Growth of the rate of events by maximum likelihood: given their number, they are exponentially spread over the period.
 * Source: D. R. Cox and P. A. W. Lewis, The Statistical Analysis of Series of Events (1966), section 3.3.
 *
 * @param times of the events, from 0 at the beginning of the period
 * @param dispersion how many times as much counts vary as Poisson counts: limits are apart by its square root more. Source:
 *   P. McCullagh and J. A. Nelder, Generalized Linear Models (1989), section 6.2.3
 * @throws RangeError for fewer than two events
 */
export function exponentialTrend(
  times: readonly number[],
  end: number,
  level: number,
  dispersion = 1,
): ExponentialTrend {
  if (times.length < 2) throw new RangeError('Two events are needed to see a trend.');
  const centre = times.reduce((sum, time) => sum + time, 0) / times.length / end;
  const value = root((growth) => meanPosition(growth) - centre, -LARGEST_GROWTH, LARGEST_GROWTH);
  const half =
    inverseNormal((1 + level) / 2) * Math.sqrt(dispersion / (times.length * variancePosition(value)));
  return {
    growth: { value, low: value - half, high: value + half, level },
    endOverMean: {
      value: endOverMean(value),
      low: endOverMean(value - half),
      high: endOverMean(value + half),
      level,
    },
  };
}

function endOverMean(growth: number): number {
  return Math.abs(growth) < 1e-9 ? 1 : growth / -Math.expm1(-growth);
}

/** What share of the events is expected in each of equal parts of the period, where their rate grows so. */
export function sharesOfTrend({ growth }: ExponentialTrend, parts: number): number[] {
  const upTo = (position: number): number =>
    Math.abs(growth.value) < 1e-9 ? position : Math.expm1(growth.value * position) / Math.expm1(growth.value);
  return Array.from({ length: parts }, (_, part) => upTo((part + 1) / parts) - upTo(part / parts));
}

/** Mean of a position on [0, 1] whose density is proportional to exp(growth · position). */
function meanPosition(growth: number): number {
  if (Math.abs(growth) < 1e-4) return 0.5 + growth / 12;
  return 1 / -Math.expm1(-growth) - 1 / growth;
}

function variancePosition(growth: number): number {
  if (Math.abs(growth) < 1e-2) return 1 / 12 - growth ** 2 / 240;
  return 1 / growth ** 2 - Math.exp(growth) / Math.expm1(growth) ** 2;
}
