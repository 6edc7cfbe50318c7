import { describe, expect, it } from 'vitest';
import {
  availability,
  mixtureOf,
  sumOf,
  variabilityOf,
  withOutages,
  withRework,
  withSetUps,
} from './process-time.ts';

/** Moments from a mean and a squared coefficient of variation. */
function time(mean: number, variability: number) {
  return { mean, variance: variability * mean ** 2 };
}

describe('effective process time', () => {
  it('of machines that stop seldom for long, or often for short', () => {
    // Source: Hopp and Spearman, "Factory Physics", section 8.4, example (from memory): the two stations Hare and Tortoise.
    const natural = time(15 / 60, 0.05);
    const hare = { hoursToFailure: 12.4, repair: time(248 / 60, 1) };
    const tortoise = { hoursToFailure: 1.9, repair: time(38 / 60, 1) };
    expect(availability(hare)).toBeCloseTo(0.75, 9);
    expect(availability(tortoise)).toBeCloseTo(0.75, 9);
    expect(60 * withOutages(natural, hare).mean).toBeCloseTo(20, 9);
    expect(variabilityOf(withOutages(natural, hare))).toBeCloseTo(6.25, 9);
    expect(variabilityOf(withOutages(natural, tortoise))).toBeCloseTo(1, 9);
  });

  it('with set-ups', () => {
    // Source: Hopp and Spearman, section 8.4.3 (from memory: ce² = 0.31).
    const effective = withSetUps(time(1, 0.0625), time(2, 0.0625), 10);
    expect(effective.mean).toBeCloseTo(1.2, 12);
    expect(effective.variance).toBeCloseTo(0.4475, 12);
    expect(variabilityOf(effective)).toBeCloseTo(0.3107638889, 9);
  });

  it('with rework', () => {
    // Source: Hopp and Spearman, chapter 12; random sum, recomputed.
    const effective = withRework(time(1, 0.25), 0.2);
    expect(effective.mean).toBeCloseTo(1.25, 12);
    expect(effective.variance).toBeCloseTo(0.625, 12);
    expect(variabilityOf(effective)).toBeCloseTo(0.4, 12);
  });

  it('of a mixture has the moments of its parts and of their difference', () => {
    // Hyperexponential: a tenth of mean 5.5, the rest of mean 0.5, second moment 6.5 (Pollaczek–Khinchine example).
    const mixed = mixtureOf([
      { weight: 1, time: time(5.5, 1) },
      { weight: 9, time: time(0.5, 1) },
    ]);
    expect(mixed.mean).toBeCloseTo(1, 12);
    expect(mixed.variance + mixed.mean ** 2).toBeCloseTo(6.5, 12);
    expect(mixtureOf([])).toEqual({ mean: 0, variance: 0 });
  });

  it('of nothing has no variability, and stays nothing', () => {
    expect(variabilityOf(sumOf([]))).toBe(0);
    expect(withOutages(time(0, 0), { hoursToFailure: 10, repair: time(1, 1) })).toEqual({
      mean: 0,
      variance: 0,
    });
  });
});
