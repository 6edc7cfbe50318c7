import { studentQuantile } from '@buildweek/numbers';
import { expect, test } from 'vitest';
import { FeasibilityTest } from './feasibility.ts';
import { fixedSizeReplications } from './fixed-size.ts';
import { mostErrors } from './test-data/most-errors.ts';
import { normalDraws } from './test-data/normal-draws.ts';

// Source: tables of Student's distribution: t for 0.95 and 2 degrees of freedom is 2.920 (2.919986).
test('The size is the square of t S / tolerance, and never below the first stage.', () => {
  expect(studentQuantile(0.95, 2)).toBeCloseTo(2.919986, 6);
  // S = 1: (2.919986 / 0.5)² = 34.1.
  expect(fixedSizeReplications([1, 2, 3], 0.5, 0.05)).toBe(35);
  expect(fixedSizeReplications([1, 2, 3], 5, 0.05)).toBe(3);
  expect(fixedSizeReplications([2, 2, 2], 0.001, 0.05)).toBe(3);
  expect(() => fixedSizeReplications([1, 2, 3], 0, 0.05)).toThrow('tolerance');
  expect(() => fixedSizeReplications([1, 2, 3], 1, 0.5)).toThrow('error level');
  expect(() => fixedSizeReplications([1], 1, 0.05)).toThrow(RangeError);
});

// Source: the same tables: t for 0.9 and 2 degrees of freedom is 1.885618.
test('Where the two sides may err differently, t is the mean of both critical values.', () => {
  // (2.919986 + 1.885618) / 2 = 2.402802; (2.402802 / 0.5)² = 23.1.
  expect(fixedSizeReplications([1, 2, 3], 0.5, 0.05, 0.1)).toBe(24);
  expect(fixedSizeReplications([1, 2, 3], 0.5, 0.1, 0.05)).toBe(24);
  expect(() => fixedSizeReplications([1, 2, 3], 1, 0.05, 0.5)).toThrow('error level');
});

test('It errs no more often than it may one tolerance away, and needs more than the sequential test there.', () => {
  const USES = 4000;
  const draw = normalDraws('fixed size');
  let wrong = 0;
  let fixed = 0;
  let sequential = 0;
  for (let use = 0; use < USES; use++) {
    const values = Array.from({ length: 10 }, () => -1 + 4 * draw());
    const wanted = fixedSizeReplications(values, 1, 0.01);
    const test = new FeasibilityTest({
      tolerances: [1],
      falseMet: 0.01,
      falseMissed: 0.01,
      firstStage: { met: 10, missed: 10 },
    });
    for (let index = 0; index < wanted || test.state === 'undecided'; index++) {
      if (index >= values.length) values.push(-1 + 4 * draw());
      if (test.state === 'undecided') test.add([values[index] as number]);
    }
    if (values.slice(0, wanted).reduce((sum, value) => sum + value, 0) > 0) wrong++;
    fixed += wanted;
    sequential += test.replications;
  }
  expect(wrong).toBeLessThanOrEqual(mostErrors(USES, 0.01));
  expect(wrong).toBeGreaterThan(0);
  expect(fixed).toBeGreaterThan(1.2 * sequential);
});
