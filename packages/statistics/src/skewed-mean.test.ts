import { studentCumulative } from '@buildweek/numbers';
import { describe, expect, test } from 'vitest';
import { oneSidedConfidence } from './one-sided.ts';
import { skewedConfidence } from './skewed-mean.ts';
import { draws } from './test-data/draws.ts';

describe('the confidence that the mean of leaning values is at least 0', () => {
  test('is the transformation worked out by hand', () => {
    // Mean 1/2, sum of squares 3, of cubes −6 of the deviations 1/2, 1/2, 1/2, −3/2: variance 1, skewness −1.1547.
    const values = [1, 1, 1, -1];
    const skewness = -3 / 4 / 0.75 ** 1.5;
    expect(skewness).toBeCloseTo(-1.154700538, 9);
    const straightened = ((1 + (skewness * 0.5) / 3) ** 3 - 1) / skewness + skewness / 24;
    // 1 − 0.57735 / 3 = 0.80755, to the third power 0.526633; −0.473367 / −1.1547 − 1.1547 / 24.
    expect(straightened).toBeCloseTo(0.36184, 5);
    expect(skewedConfidence(values)).toBeCloseTo(studentCumulative(2 * straightened, 3), 12);
  });

  test('is that of Student for values that lean to neither side, or do not vary', () => {
    const symmetric = [-1, 0, 1, 2, 3];
    expect(skewedConfidence(symmetric)).toBe(oneSidedConfidence(symmetric));
    expect([skewedConfidence([2, 2]), skewedConfidence([-1, -1])]).toEqual([1, 0]);
    expect(() => skewedConfidence([1])).toThrow('At least 2');
  });

  test('of mirrored values is what is left to 1', () => {
    const values = [0.5, 1, -3, 0.2, 0.9, 1.4];
    expect(skewedConfidence(values) + skewedConfidence(values.map((value) => -value))).toBeCloseTo(1, 12);
  });

  test('calls a mean of 0 "at least 0" less often than Student does where a few values are very bad', () => {
    const random = draws('leaning values');
    const wrong = { student: 0, skewed: 0 };
    const samples = 4000;
    for (let sample = 0; sample < samples; sample++) {
      // One less an exponential value: mean 0, skewness −2.
      const values = Array.from({ length: 40 }, () => 1 + Math.log(1 - random()));
      if (oneSidedConfidence(values) >= 0.95) wrong.student++;
      if (skewedConfidence(values) >= 0.95) wrong.skewed++;
    }
    // Standard error of a share of 0.05: 0.0034; bounds four of them from what was measured with other seeds.
    expect(wrong.student / samples).toBeGreaterThan(0.08);
    expect(wrong.skewed / samples).toBeLessThan(0.07);
  });
});
