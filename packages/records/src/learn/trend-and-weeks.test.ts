import { gammaQuantile } from '@buildweek/numbers';
import { laplaceTrend } from '@buildweek/statistics';
import { describe, expect, it } from 'vitest';
import { loggedJob } from '../fixture/logged-job.ts';
import { arrivalFacts } from './arrival-facts.ts';

const WEEK = 7 * 86_400_000;
const MONDAY = 4 * 86_400_000;
const WEEKS = 52;

/** Every job of a week in the middle of it. */
function factsOf(weekly: readonly number[]) {
  const jobs = weekly.flatMap((count, week) =>
    Array.from({ length: count }, () =>
      loggedJob({ asked: MONDAY + (week + 0.5) * WEEK, askedHasClock: false }),
    ),
  );
  const log = {
    from: MONDAY,
    until: MONDAY + weekly.length * WEEK,
    jobs,
    counted: { read: jobs.length, kept: jobs.length, troubles: [] },
  };
  return arrivalFacts(log, null, () => 0.5);
}

/** An even spread of quantiles in an order without a trend: multiples of the golden ratio. */
function even(index: number): number {
  return (index * 0.6180339887498949 + 0.5) % 1;
}

describe('trend and variation of whole weeks', () => {
  it('are told apart: demand that doubles in a year does not look like weeks that differ', () => {
    const growing = Array.from({ length: WEEKS }, (_, week) => Math.round(30 * 2 ** (week / WEEKS)));
    const { trend, weekVariation, dispersion } = factsOf(growing);
    expect(trend?.isClear).toBe(true);
    expect(trend?.fitted.growth.value).toBeCloseTo(Math.LN2, 1);
    expect(weekVariation).toBe(0);
    expect(dispersion?.index).toBeLessThan(0.1);
  });

  it('are told apart: busy and calm weeks one after the other look like a trend only by their chance', () => {
    const shape = 1 / 0.5 ** 2;
    // Of a hundred logs a level of 1 % brings more than five false alarms once in 1,900 times.
    let clear = 0;
    let clearToLaplace = 0;
    for (let log = 0; log < 100; log++) {
      const weekly = Array.from({ length: WEEKS }, (_, week) =>
        Math.round((20 * gammaQuantile(even(log * 977 + week * week + 1), shape)) / shape),
      );
      const { trend, weekVariation } = factsOf(weekly);
      if (trend?.isClear === true) clear++;
      const times = weekly.flatMap((count, week) => Array.from({ length: count }, () => week + 0.5));
      if (laplaceTrend(times, WEEKS).pValue < 0.01) clearToLaplace++;
      expect(weekVariation).toBeGreaterThan(0.3);
    }
    expect(clear).toBeLessThanOrEqual(5);
    expect(clearToLaplace).toBeGreaterThan(10);
  });

  it('allows for what whole weeks differ also where it is not significant', () => {
    // 16, 20 and 24 in turn: variance 10.88 of a mean of 20, less than chance; with 10 and 30 more.
    expect(factsOf(Array.from({ length: WEEKS }, (_, week) => 16 + 4 * (week % 3))).allowedVariation).toBe(0);
    const slightly = Array.from({ length: 12 }, (_, week) => [14, 20, 26][week % 3] ?? 0);
    const { allowedVariation, weekVariation, dispersion } = factsOf(slightly);
    // Variance 26.18 of a mean of 20: (1.309 − 1) / 20 is 0.1243 squared.
    expect(dispersion?.pValue).toBeGreaterThan(0.05);
    expect(weekVariation).toBe(0);
    expect(allowedVariation).toBeCloseTo(0.1243, 3);
  });
});
