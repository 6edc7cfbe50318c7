import { describe, expect, it } from 'vitest';
import { createPoissonArrivals } from './arrivals.ts';
import { MILLISECONDS_PER_WEEK } from './clock.ts';
import { createLocalTime } from './local-time.ts';
import { createStream } from './streams.ts';
import { WeekFactors } from './week-factors.ts';

const WEEKS = 4000;
const VARIATION = 0.4;

/** Arrivals of each week. */
function weeklyCounts(weekVariation: number | undefined): number[] {
  const factors = new WeekFactors(createStream('weeks', 0, 'week factor', 'all demand'));
  const pattern = {
    kind: 'poisson',
    perWeek: 20,
    profile: null,
    growthPerMonth: 0,
    jobsPerArrival: { kind: 'fixed', value: 1 },
    ...(weekVariation === undefined ? {} : { weekVariation }),
  } as const;
  const arrivals = createPoissonArrivals(pattern, createLocalTime([]), factors);
  const stream = createStream('weeks', 0, 'arrivals', 'lever');
  const counts = Array.from({ length: WEEKS }, () => 0);
  for (let time = arrivals.next(stream()); ; time = arrivals.next(stream())) {
    const week = Math.floor(time / MILLISECONDS_PER_WEEK);
    if (week >= WEEKS) return counts;
    counts[week] = (counts[week] ?? 0) + 1;
  }
}

function momentsOf(counts: readonly number[]): { readonly mean: number; readonly variance: number } {
  const mean = counts.reduce((sum, count) => sum + count, 0) / counts.length;
  const variance = counts.reduce((sum, count) => sum + (count - mean) ** 2, 0) / (counts.length - 1);
  return { mean, variance };
}

describe('WeekFactors', () => {
  it('leave the mean rate as it is, and make counts of weeks negative binomial', () => {
    const { mean, variance } = momentsOf(weeklyCounts(VARIATION));
    // A negative binomial count has the variance mean + (mean · variation)² = 84, and an excess kurtosis of
    // 6 · variation² + 1 / 84 = 0.97. Bounds: four standard errors.
    expect(Math.abs(mean - 20)).toBeLessThan(4 * Math.sqrt(84 / WEEKS));
    expect(Math.abs(variance - 84)).toBeLessThan(4 * 84 * Math.sqrt((2 + 0.97) / WEEKS));
  });

  it('change nothing where weeks do not vary', () => {
    const plain = weeklyCounts(undefined);
    expect(weeklyCounts(0)).toEqual(plain);
    // A Poisson count has its mean as variance; four standard errors.
    expect(Math.abs(momentsOf(plain).variance - 20)).toBeLessThan(4 * 20 * Math.sqrt((2 + 1 / 20) / WEEKS));
  });

  it('are the same for everybody who shares the stream, in whatever order weeks are asked for', () => {
    const [one, other] = ['a', 'b'].map(
      () => new WeekFactors(createStream('s', 3, 'week factor', 'all demand')),
    );
    const late = one?.of(7, VARIATION);
    expect([0, 1, 7].map((week) => other?.of(week, VARIATION)).at(-1)).toBe(late);
  });
});
