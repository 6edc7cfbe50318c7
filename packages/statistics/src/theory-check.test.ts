import { describe, expect, test } from 'vitest';
import { meanInterval } from './mean-interval.ts';
import { standardError } from './summary.ts';
import { draws } from './test-data/draws.ts';
import { theoryVerdict } from './theory-check.ts';

const exact = Number.POSITIVE_INFINITY;

describe('an estimate held against theory', () => {
  test('may be 4.05 standard errors off among 200 assertions with many replications', () => {
    const check = { estimate: 1.4, standardError: 0.1, truth: 1, degreesOfFreedom: exact, assertions: 200 };
    expect(theoryVerdict(check).limit).toBeCloseTo(4.05, 10);
    expect(theoryVerdict(check).score).toBeCloseTo(4, 10);
    expect(theoryVerdict(check).agrees).toBe(true);
    expect(theoryVerdict({ ...check, estimate: 1.41 }).agrees).toBe(false);
    expect(theoryVerdict({ ...check, estimate: 0.59 }).agrees).toBe(false);
  });

  test('may be 4.75 standard errors off with 29 degrees of freedom, at the same rate of false alarms', () => {
    const check = { estimate: 1, standardError: 0.1, truth: 1, degreesOfFreedom: 29, assertions: 200 };
    expect(theoryVerdict(check).limit).toBeCloseTo(4.75, 2);
  });

  test('may be less off where fewer assertions are made', () => {
    const limits = [1, 2, 20, 200, 2000].map(
      (assertions) =>
        theoryVerdict({ estimate: 1, standardError: 0.1, truth: 1, degreesOfFreedom: 59, assertions }).limit,
    );
    expect(limits).toEqual([...limits].sort((first, second) => first - second));
    expect(new Set(limits).size).toBe(5);
  });

  test('seldom gives a false alarm, and notices a mean that is 5 % wrong', () => {
    const draw = draws('theory');
    let alarms = 0;
    let noticed = 0;
    for (let repetition = 0; repetition < 200; repetition++) {
      // Thirty means of 400 exponential values: a standard error of about 0.9 %.
      const means = Array.from({ length: 30 }, () => {
        let sum = 0;
        for (let job = 0; job < 400; job++) sum -= Math.log(draw());
        return sum / 400;
      });
      const estimate = meanInterval(means, 0.95).value;
      const check = { estimate, standardError: standardError(means), degreesOfFreedom: 29, assertions: 20 };
      if (!theoryVerdict({ ...check, truth: 1 }).agrees) alarms++;
      if (!theoryVerdict({ ...check, truth: 1.05 }).agrees) noticed++;
    }
    // Expected alarms 200 · 0.01 / 20 = 0.1; four or more would happen once in a quarter of a million.
    expect(alarms).toBeLessThan(4);
    expect(noticed).toBeGreaterThan(180);
  });

  test('is refused without a standard error, and without an assertion', () => {
    const check = { estimate: 1, standardError: 0.1, truth: 1, degreesOfFreedom: 29, assertions: 1 };
    for (const wrong of [0, -1, Number.NaN, exact]) {
      expect(() => theoryVerdict({ ...check, standardError: wrong })).toThrow(/standard error/);
    }
    expect(() => theoryVerdict({ ...check, assertions: 0 })).toThrow(/assertion/);
    expect(() => theoryVerdict({ ...check, truth: Number.NaN })).toThrow(/not a number/);
  });
});
