import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pairedDifference, welchDifference } from './comparison.ts';
import { correlation, mean, variance } from './summary.ts';
import { draws } from './test-data/draws.ts';

const values = fc.array(fc.double({ min: -100, max: 100, noNaN: true }), { minLength: 3, maxLength: 20 });

describe('the difference of two systems', () => {
  // Source: A. M. Law and W. D. Kelton, Simulation Modeling and Analysis, section 10.2 (data from memory; the book
  // gives 4.98 and [1.65, 8.31]); the rest recomputed with R.
  test('agrees with the published example of two inventory policies', () => {
    const first = [126.97, 124.31, 126.68, 122.66, 127.23];
    const second = [118.21, 120.22, 122.45, 122.68, 119.4];
    const paired = pairedDifference(first, second, 0.9);
    expect(paired.value).toBeCloseTo(4.978, 12);
    expect(paired.standardError ** 2).toBeCloseTo(2.43827400000001, 11);
    expect(paired.low).toBeCloseTo(1.64912687483549, 10);
    expect(paired.high).toBeCloseTo(8.30687312516451, 10);
    expect(paired.t).toBeCloseTo(3.18796568788112, 11);
    expect(paired.pValue).toBeCloseTo(0.0332808237861026, 12);
    expect(paired.correlation).toBeCloseTo(-0.570895748245686, 12);
    const welch = welchDifference(first, second, 0.9);
    expect(welch.degreesOfFreedom).toBeCloseTo(7.99238593004325, 10);
    expect(welch.low).toBeCloseTo(2.66078561772831, 9);
    expect(welch.high).toBeCloseTo(7.29521438227171, 9);
  });

  // Source: made-up data; recomputed with R, t.test.
  test('is ten times sharper on common random numbers than the unpaired one', () => {
    const first = [41.2, 38.7, 45.1, 50.3, 36.9, 43.8, 47.5, 40.6];
    const second = [39.8, 36.1, 43.9, 47.2, 36.0, 41.1, 45.6, 38.9];
    const paired = pairedDifference(first, second, 0.95);
    expect(paired.value).toBeCloseTo(1.9375, 12);
    expect(paired.standardError * Math.sqrt(8)).toBeCloseTo(0.78728738626465, 12);
    expect(paired.correlation).toBeCloseTo(0.98661485589541, 12);
    expect(paired.low).toBeCloseTo(1.27931127374758, 10);
    expect(paired.high).toBeCloseTo(2.59568872625242, 10);
    expect(paired.t).toBeCloseTo(6.96070793182198, 10);
    expect(paired.pValue).toBeCloseTo(0.000219088376951278, 14);
    expect(paired.varianceReduction).toBeCloseTo(61.3365024488624, 9);
    const welch = welchDifference(first, second, 0.95);
    expect(welch.low).toBeCloseTo(-2.74063388318707, 9);
    expect(welch.high).toBeCloseTo(6.61563388318707, 9);
  });

  // Source: Student (W. S. Gosset), "The probable error of a mean", Biometrika 6 (1908); R data set sleep.
  test("agrees with the published analysis of Student's sleep data", () => {
    const first = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0, 2];
    const second = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4];
    const paired = pairedDifference(first, second, 0.95);
    expect(paired.t).toBeCloseTo(-4.06212768338204, 11);
    expect(paired.pValue).toBeCloseTo(0.00283289019738427, 13);
    expect(paired.low).toBeCloseTo(-2.45988576327698, 10);
    expect(paired.high).toBeCloseTo(-0.700114236723018, 10);
    const welch = welchDifference(first, second, 0.95);
    expect(welch.t).toBeCloseTo(-1.86081346748685, 12);
    expect(welch.degreesOfFreedom).toBeCloseTo(17.7764735161785, 10);
    expect(welch.pValue).toBeCloseTo(0.0793941401873582, 12);
  });

  // Source: closed form; J. M. Hammersley and D. C. Handscomb, Monte Carlo Methods (1964): X = −ln U and Y = −1.2 ln U
  // have Var(X − Y) = 0.04 on the same U, and 2.44 on independent ones.
  test('has a 61st of the variance when both systems draw from the same numbers by inversion', () => {
    const draw = draws('common random numbers');
    const first = Array.from({ length: 200_000 }, () => -Math.log(draw()));
    const same = first.map((value) => 1.2 * value);
    expect(pairedDifference(first, same, 0.95).varianceReduction).toBeCloseTo(61, 8);
    const other = Array.from({ length: 200_000 }, () => -1.2 * Math.log(draw()));
    const paired = pairedDifference(first, other, 0.95);
    // A sample variance of an exponential difference has a relative error of about sqrt(5 / n) = 0.5 %.
    expect(paired.standardError ** 2 * 200_000).toBeGreaterThan(2.44 * 0.975);
    expect(paired.standardError ** 2 * 200_000).toBeLessThan(2.44 * 1.025);
    expect(paired.varianceReduction).toBeCloseTo(1, 1);
  });

  // Source: as above: Cov(−ln U, −ln(1 − U)) = 1 − π²/6.
  test('gains from antithetic draws what theory says', () => {
    const cells = 200_000;
    const uniform = Array.from({ length: cells }, (_, index) => (index + 0.5) / cells);
    const first = uniform.map((value) => -Math.log(value));
    const second = uniform.map((value) => -Math.log1p(-value));
    const covariance = correlation(first, second) * Math.sqrt(variance(first) * variance(second));
    expect(covariance).toBeCloseTo(1 - Math.PI ** 2 / 6, 3);
  });

  test('changes its sign, and nothing else, when the systems change places', () => {
    fc.assert(
      fc.property(values, values, (first, second) => {
        const length = Math.min(first.length, second.length);
        const left = first.slice(0, length);
        const right = second.slice(0, length);
        fc.pre(variance(left) > 1e-6 && variance(right) > 1e-6);
        for (const compare of [pairedDifference, welchDifference]) {
          const one = compare(left, right, 0.95);
          const other = compare(right, left, 0.95);
          expect(other.value).toBeCloseTo(-one.value, 10);
          expect(other.low).toBeCloseTo(-one.high, 8);
          expect(one.value).toBeCloseTo(mean(left) - mean(right), 10);
        }
      }),
      { seed: 1 },
    );
  });

  test('of equal systems is zero without doubt', () => {
    expect(pairedDifference([1, 2, 3], [1, 2, 3], 0.95)).toMatchObject({
      value: 0,
      low: 0,
      high: 0,
      pValue: 1,
    });
    expect(pairedDifference([2, 3, 4], [1, 2, 3], 0.95)).toMatchObject({
      value: 1,
      low: 1,
      high: 1,
      pValue: 0,
    });
  });

  test('is refused where there are no pairs, or no spread', () => {
    expect(() => pairedDifference([1, 2], [1], 0.95)).toThrow(/Pairs/);
    expect(() => welchDifference([1, 1], [2, 2], 0.95)).toThrow(/Neither side varies/);
    expect(() => welchDifference([1], [2, 3], 0.95)).toThrow(/At least 2/);
  });
});
