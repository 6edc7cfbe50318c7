import { expect, test } from 'vitest';
import { coverageOf } from './coverage.ts';
import type { Outcome } from './outcome.ts';

/** A thousand outcomes of which so many hold in each of their intervals. */
function outcomesWith(mean: number, p95: number, prediction: number): Outcome[] {
  const interval = (holds: boolean) => ({ low: 1, high: 2, holds });
  return Array.from({ length: 1000 }, (_, repetition) => ({
    seed: `made up ${repetition}`,
    replications: 20,
    jobs: 100,
    mean: interval(repetition < mean),
    p95: interval(repetition < p95),
    prediction: interval(repetition < prediction),
    next: 1.5,
  }));
}

test('Too few and too many intervals that hold are both noticed, each kind by itself.', () => {
  const within = (outcomes: Outcome[]) => coverageOf(outcomes).map(({ isWithin }) => isWithin);
  expect(within(outcomesWith(926, 971, 950))).toEqual([true, true, true]);
  expect(within(outcomesWith(925, 971, 972))).toEqual([false, true, false]);
  expect(within(outcomesWith(926, 925, 0))).toEqual([true, false, false]);
  expect(coverageOf(outcomesWith(925, 950, 950))[0]?.words).toBe(
    'the 95 % interval of the mean holds it in 925 of 1000 studies; 926 to 971 are accepted',
  );
});
