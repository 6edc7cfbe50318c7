import { inverseNormal } from '@buildweek/numbers';
import { describe, expect, it } from 'vitest';
import { explainedVariance } from './explained-variance.ts';
import { draws } from './test-data/draws.ts';

/** y = 3 a + 2 b + 0 c + noise of variance 3, with factors uniform on ±√3, whose variance is 1: shares 9, 4, 0 of 16. */
function observations(count: number, seed: string) {
  const random = draws(seed);
  const factors = Array.from({ length: count }, () => [0, 1, 2].map(() => Math.sqrt(3) * (2 * random() - 1)));
  const outcomes = factors.map(([a = 0, b = 0]) => 3 * a + 2 * b + Math.sqrt(3) * inverseNormal(random()));
  return { factors, outcomes };
}

describe('explained variance', () => {
  it('finds the shares of a linear model within intervals, in about as many cases as they promise', () => {
    let covered = 0;
    const truth = [9 / 16, 4 / 16];
    for (let seed = 0; seed < 100; seed++) {
      const { factors, outcomes } = observations(200, `seed ${seed}`);
      const found = explainedVariance(factors, outcomes, 0.95).factors;
      truth.forEach((share, index) => {
        const { low, high } = found[index] ?? { low: 1, high: 0 };
        if (low <= share && share <= high) covered++;
      });
    }
    // 200 cases at 95 %: fewer than 178 would come once in a thousand (binomial).
    expect(covered).toBeGreaterThanOrEqual(178);
  });

  it('adds up to what all explain together, and leaves the rest to chance', () => {
    const { factors, outcomes } = observations(4000, 'large');
    const { factors: found, together } = explainedVariance(factors, outcomes, 0.99);
    expect(together.low).toBeLessThan(13 / 16);
    expect(together.high).toBeGreaterThan(13 / 16);
    expect(found[2]?.value).toBeLessThan(0.002);
    expect(found[2]?.low).toBe(0);
  });

  it('explains nothing where nothing varies', () => {
    const { factors } = observations(100, 'still');
    const { together, factors: found } = explainedVariance(
      factors,
      factors.map(() => 7),
      0.95,
    );
    expect([together.value, ...found.map(({ value }) => value)]).toEqual([0, 0, 0, 0]);
  });

  it('refuses too few observations', () => {
    const { factors, outcomes } = observations(79, 'few');
    expect(() => explainedVariance(factors, outcomes, 0.95)).toThrow(RangeError);
  });
});
