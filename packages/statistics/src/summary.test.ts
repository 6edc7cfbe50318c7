import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { autocorrelation } from './autocorrelation.ts';
import { correlation, mean, moments, standardDeviation, standardError, variance } from './summary.ts';
import * as nist from './test-data/nist-strd.ts';

const finite = fc.double({ min: -1e6, max: 1e6, noNaN: true });
const sample = fc.array(finite, { minLength: 2, maxLength: 50 });

/**
 * NumAcc3 and 4 hold numbers such as 10000000.1, whose rounding to a double alone (up to 1e-9) moves the standard
 * deviation of 0.1 by some 1e-8 of itself.
 */
const DIGITS_IN_THE_DATA = 2e-8;

// Source: NIST StRD, Univariate Summary Statistics, values certified to 15 digits.
const certified: readonly [string, readonly number[], number, number, number, number, number][] = [
  ['Lew', nist.LEW, 200, -177.435, 277.332168044316, -0.307304800605679, 1e-13],
  ['Lottery', nist.LOTTERY, 218, 518.95871559633, 291.699727470969, -0.120948622967393, 1e-13],
  ['Mavro', nist.MAVRO, 50, 2.001856, 0.000429123454003053, 0.937989183438248, 1e-11],
  ['Michelso', nist.MICHELSO, 100, 299.8524, 0.0790105478190518, 0.535199668621283, 1e-11],
  ['PiDigits', nist.digitsOfPiAsFiled(), 5000, 4.5348, 2.86733906028871, -0.00355099287237972, 1e-13],
  ['NumAcc1', nist.NUMERICAL_ACCURACY_1, 3, 10000002, 1, -0.5, 1e-15],
  ['NumAcc2', nist.numericalAccuracy('1.2'), 1001, 1.2, 0.1, -0.999, 1e-13],
  ['NumAcc3', nist.numericalAccuracy('1000000.2'), 1001, 1000000.2, 0.1, -0.999, DIGITS_IN_THE_DATA],
  ['NumAcc4', nist.numericalAccuracy('10000000.2'), 1001, 10000000.2, 0.1, -0.999, DIGITS_IN_THE_DATA],
];

describe('the summary of a sample', () => {
  test.each(certified)('agrees with the certified values of NIST: %s', (_, values, n, m, s, r, tolerance) => {
    expect(values.length).toBe(n);
    expect(Math.abs(mean(values) / m - 1)).toBeLessThan(1e-14);
    expect(Math.abs(standardDeviation(values) / s - 1)).toBeLessThan(tolerance);
    expect(Math.abs(autocorrelation(values, 1) / r - 1)).toBeLessThan(10 * tolerance);
  });

  test('agrees with exact arithmetic on the first 5000 digits of pi', () => {
    // Source: computed with two independent generators of pi, in whole numbers.
    const digits = nist.digitsOfPi(5000);
    expect(digits.reduce((total, digit) => total + digit, 0)).toBe(22679);
    expect(mean(digits)).toBe(4.5358);
    expect(standardDeviation(digits)).toBeCloseTo(2.867675552187612, 13);
    expect(autocorrelation(digits, 1)).toBeCloseTo(-0.00380209763211514, 14);
  });

  test('does not depend on the order of the values', () => {
    fc.assert(
      fc.property(sample, (values) => {
        const turned = [...values].reverse();
        expect(mean(turned)).toBe(mean(values));
        const spread = standardDeviation(values);
        expect(Math.abs(standardDeviation(turned) - spread)).toBeLessThanOrEqual(1e-9 * (1 + spread));
      }),
      { seed: 1 },
    );
  });

  test('follows a change of origin and of unit', () => {
    fc.assert(
      fc.property(sample, finite, fc.double({ min: -100, max: 100, noNaN: true }), (values, origin, unit) => {
        const changed = values.map((value) => origin + unit * value);
        const size = Math.max(1, ...changed.map(Math.abs), ...values.map(Math.abs));
        expect(Math.abs(mean(changed) - origin - unit * mean(values))).toBeLessThan(1e-11 * size * 100);
        const expected = Math.abs(unit) * standardDeviation(values);
        expect(Math.abs(standardDeviation(changed) - expected)).toBeLessThan(1e-11 * size * 100);
      }),
      { seed: 2 },
    );
  });

  test('keeps what pooling needs', () => {
    expect(moments([2, 4, 9])).toEqual({ count: 3, mean: 5, squares: 26 });
    expect(moments([])).toEqual({ count: 0, mean: 0, squares: 0 });
    expect(variance([2, 4, 9])).toBe(13);
    expect(standardError([2, 4, 9])).toBeCloseTo(Math.sqrt(13 / 3), 15);
  });

  test('finds a correlation of 1 in values that rise together and of -1 in values that do not', () => {
    expect(correlation([1, 2, 4], [10, 20, 40])).toBeCloseTo(1, 14);
    expect(correlation([1, 2, 4], [-10, -20, -40])).toBeCloseTo(-1, 14);
    expect(correlation([1, 2, 3, 4], [1, -1, -1, 1])).toBe(0);
    expect(correlation([1, 2], [3, 3])).toBeNaN();
  });

  test('refuses too few values, and values that are not finite', () => {
    expect(() => mean([])).toThrow(/At least 1/);
    expect(() => variance([1])).toThrow(/At least 2/);
    expect(() => mean([1, Number.POSITIVE_INFINITY])).toThrow(/Value 1 is not finite/);
    expect(() => moments([Number.NaN])).toThrow(/not finite/);
    expect(() => correlation([1, 2], [1])).toThrow(/Pairs/);
  });
});
