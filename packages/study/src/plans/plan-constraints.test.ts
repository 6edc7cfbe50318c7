import type { BusyTarget } from '@buildweek/model';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shareWithin } from '../fixture/plans.ts';
import { constraintValue, planConstraints } from './plan-constraints.ts';

const ONE_IN_FIVE = { kind: 'chance of a period', chance: 0.8 } as const;
const BUSY: BusyTarget = {
  kind: 'busy',
  wording: 'people busy at most 80 %',
  of: 'people',
  group: null,
  atMost: 0.8,
  meaning: { kind: 'long run' },
};

/** Numerator and denominator of the second measure; the first one is another's. */
function observed(numerator: number, denominator: number): Float64Array {
  return Float64Array.of(99, 99, numerator, denominator);
}

function constraintOf(
  target: Parameters<typeof planConstraints>[0][number],
  numerator: number,
  denominator: number,
) {
  const [constraint] = planConstraints([target], 1, [observed(60, 90), observed(70, 110)]);
  if (constraint === undefined) throw new Error('There is no constraint.');
  return constraintValue(constraint, observed(numerator, denominator));
}

describe('a target as a constraint', () => {
  it('is for the long run what is there above the target, over the jobs of a usual period', () => {
    // Of 50 jobs 45 are asked for and 47 are there: 2 more, of the 100 of a usual period.
    expect(constraintOf(shareWithin(0.9), 47, 50)).toBeCloseTo(0.02, 12);
    expect(constraintOf(shareWithin(0.9), 100, 120)).toBeCloseTo(-0.08, 12);
    expect(constraintOf(shareWithin(0.9), 0, 0)).toBe(0);
  });

  it('has a mean of at least 0 exactly when the share of all jobs is at least what is asked', () => {
    const period = fc.nat({ max: 60 }).chain((jobs) => fc.tuple(fc.nat({ max: jobs }), fc.constant(jobs)));
    fc.assert(
      fc.property(
        fc.array(period, { minLength: 1, maxLength: 8 }),
        fc.integer({ min: 1, max: 99 }),
        (periods, percent) => {
          const all = periods.reduce((sum, [, jobs]) => sum + jobs, 0);
          const inTime = periods.reduce((sum, [good]) => sum + good, 0);
          // Where both are equal, rounding decides.
          fc.pre(100 * inTime !== percent * all);
          const sum = periods.reduce(
            (total, [good, jobs]) => total + constraintOf(shareWithin(percent / 100), good, jobs),
            0,
          );
          expect(sum > 0).toBe(100 * inTime > percent * all);
        },
      ),
      { seed: 5 },
    );
  });

  it('is for people and machines the share that is free of what they may be busy', () => {
    expect(constraintOf(BUSY, 30, 50)).toBeCloseTo(0.2, 12);
    expect(constraintOf(BUSY, 45, 50)).toBeCloseTo(-0.1, 12);
    // Nobody on duty is nobody busy.
    expect(constraintOf(BUSY, 0, 0)).toBe(0.8);
  });

  it('is for the chance of a period whether this one meets it, less the chance', () => {
    const target = shareWithin(0.9, { meaning: ONE_IN_FIVE });
    expect(constraintOf(target, 44, 50)).toBeCloseTo(-0.8, 12);
    expect(constraintOf(target, 46, 50)).toBeCloseTo(0.2, 12);
    // Met exactly, though 0.7 times 10 is not 7 in binary; and nothing is late in a period without such jobs.
    expect(constraintOf(shareWithin(0.7, { meaning: ONE_IN_FIVE }), 7, 10)).toBeCloseTo(0.2, 12);
    expect(constraintOf(target, 0, 0)).toBeCloseTo(0.2, 12);
  });

  it('knows how much a period that is met or not must vary, though a few of them may all be alike', () => {
    const [longRun, chance] = planConstraints(
      [shareWithin(0.9), shareWithin(0.9, { meaning: ONE_IN_FIVE })],
      0,
      [],
    );
    expect(longRun?.leastVariance).toBe(0);
    expect(chance?.leastVariance).toBeCloseTo(0.16, 12);
  });

  it('bears a lab in which no job is meant', () => {
    const [constraint] = planConstraints([shareWithin(0.9)], 0, [Float64Array.of(0, 0)]);
    expect(constraint?.usualDenominator).toBe(1);
  });
});
