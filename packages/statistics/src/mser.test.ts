import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { mser } from './mser.ts';
import { mean } from './summary.ts';
import { draws } from './test-data/draws.ts';
import { NILE } from './test-data/nile.ts';

/** Source: a formula series that anybody can write down; recomputed. */
const FORMULA = Array.from(
  { length: 200 },
  (_, index) => 10 * Math.exp(-(index + 1) / 15) + ((37 * (index + 1)) % 101) / 101 - 0.5,
);

describe('the marginal standard error rule', () => {
  // Sources of the expected values: recomputed after White 1997 and White, Cobb & Spratt 2000.
  test('cuts the flow of the Nile where its level falls', () => {
    const { cut, statistic, truncatedMean } = mser(NILE);
    expect(cut).toBe(28);
    expect(statistic).toBeCloseTo(213.234942986968, 10);
    expect(truncatedMean).toBeCloseTo(849.972222222222, 10);
  });

  test('cuts the flow of the Nile after nine batches of five', () => {
    const { cut, statistic } = mser(NILE, 5);
    expect(cut).toBe(45);
    expect(statistic).toBeCloseTo(362.49815176559, 10);
  });

  test('finds the warm-up of the formula series', () => {
    expect(FORMULA[0]).toBeCloseTo(9.22140648397954, 13);
    expect(FORMULA[1]).toBeCloseTo(8.98440645775621, 13);
    expect(FORMULA[199]).toBeCloseTo(-0.23265707135881, 13);
    expect(mean(FORMULA)).toBeCloseTo(0.722108265714611, 13);
    const single = mser(FORMULA);
    expect(single.cut).toBe(49);
    expect(single.statistic).toBeCloseTo(0.000577734709777737, 15);
    expect(single.truncatedMean).toBeCloseTo(0.0306965309608356, 13);
    const five = mser(FORMULA, 5);
    expect(five.cut).toBe(18 * 5);
    expect(five.statistic).toBeCloseTo(0.00026120633200065, 15);
    expect(five.truncatedMean).toBeCloseTo(-0.00384414895869335, 13);
  });

  test('warns when the cut lies in the second half', () => {
    const late = Array.from({ length: 60 }, (_, index) => (index < 45 ? 45 - index : 0) + (index % 2) / 10);
    expect(mser(late).inSecondHalf).toBe(true);
    const early = Array.from({ length: 60 }, (_, index) => (index < 10 ? 10 - index : 0) + (index % 2) / 10);
    expect(mser(early)).toMatchObject({ inSecondHalf: false });
    expect(mser(early).cut).toBeGreaterThanOrEqual(9);
    expect(mser(early).cut).toBeLessThanOrEqual(12);
  });

  test('seldom warns about independent values, and then cuts little', () => {
    const draw = draws('steady from the start');
    let warnings = 0;
    let cuts = 0;
    for (let repetition = 0; repetition < 1000; repetition++) {
      const { cut, inSecondHalf } = mser(Array.from({ length: 52 }, draw));
      cuts += cut;
      if (inSecondHalf) warnings++;
    }
    expect(warnings).toBeLessThan(100);
    expect(cuts / 1000).toBeLessThan(10);
  });

  test('cuts nothing from a series that does not vary', () => {
    expect(mser(new Array(20).fill(3))).toEqual({
      cut: 0,
      statistic: 0,
      truncatedMean: 3,
      inSecondHalf: false,
    });
  });

  test('gives the smallest statistic of the first half, and does not mind another origin', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: 2, maxLength: 40 }),
        fc.integer({ min: -1000, max: 1000 }),
        (series, origin) => {
          const { cut, statistic } = mser(series);
          for (let d = 0; d <= Math.floor(series.length / 2); d++) {
            const kept = series.slice(d);
            const centre = mean(kept);
            const own = kept.reduce((total, value) => total + (value - centre) ** 2, 0) / kept.length ** 2;
            expect(statistic).toBeLessThanOrEqual(own + 1e-9 * (1 + own));
          }
          expect(cut).toBeLessThanOrEqual(series.length / 2);
          expect(mser(series.map((value) => value + origin)).statistic).toBeCloseTo(statistic, 6);
        },
      ),
      { seed: 1 },
    );
  });

  test('refuses a series shorter than two batches', () => {
    expect(() => mser([1])).toThrow(RangeError);
    expect(() => mser([1, 2, 3, 4, 5, 6, 7, 8, 9], 5)).toThrow(RangeError);
  });
});
