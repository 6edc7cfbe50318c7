import { chiSquareQuantile, studentCumulative, studentQuantile } from '@buildweek/numbers';
import { describe, expect, test } from 'vitest';
import { rinottConstant, rinottReplications } from './rinott.ts';
import { variance } from './summary.ts';
import { draws } from './test-data/draws.ts';
import { normalDraws } from './test-data/normal-draws.ts';

/** Twenty values of exactly this variance. */
function withVariance(wanted: number): number[] {
  const pattern = Array.from({ length: 20 }, (_, index) => index);
  const scale = Math.sqrt(wanted / variance(pattern));
  return pattern.map((value) => scale * value);
}

describe('the sample sizes of Rinott', () => {
  // Source: Y. Rinott, Communications in Statistics A7 (1978), 799–811 (recomputed).
  test('are the published formula', () => {
    // Just below, so that rounding of the square root does not lift a whole number to the next.
    const stages = [4, 9, 2.5].map((wanted) => withVariance(wanted * (1 - 1e-12)));
    expect(rinottReplications(stages, 3, 0.5)).toEqual([144, 324, 90]);
  });

  test('are never below the first stage', () => {
    expect(rinottReplications([withVariance(0.01), new Array(20).fill(7)], 3, 0.5)).toEqual([20, 20]);
  });

  test('are refused without a constant or a tolerance', () => {
    expect(() => rinottReplications([withVariance(1)], 3, 0)).toThrow('above 0');
    expect(() => rinottReplications([withVariance(1)], 0, 1)).toThrow('above 0');
    expect(() => rinottReplications([[1]], 3, 1)).toThrow('At least 2');
  });
});

describe('the constant of Rinott', () => {
  // Source: for two systems it is that of E. J. Dudewicz and S. R. Dalal, "Allocation of observations in ranking and
  // selection with unequal variances", Sankhya B 37 (1975); A. M. Law and W. D. Kelton, Simulation Modeling and
  // Analysis, chapter 10, table of h1 for a first stage of 20: 1.896 and 2.453 (from memory).
  test('for two systems is the tabulated one', () => {
    expect(Math.abs(rinottConstant(2, 20, 0.1) - 1.896)).toBeLessThan(0.001);
    expect(Math.abs(rinottConstant(2, 20, 0.05) - 2.453)).toBeLessThan(0.001);
  });

  test('for two systems is a quantile of the difference of two variables of Student, exactly', () => {
    // With two degrees of freedom each; the distribution of the difference by adding up over a fine grid.
    const CELLS = 4000;
    const h = rinottConstant(2, 3, 0.1);
    let chance = 0;
    for (let cell = 0; cell < CELLS; cell++) {
      chance += studentCumulative(h + studentQuantile((cell + 0.5) / CELLS, 2), 2) / CELLS;
    }
    expect(chance).toBeCloseTo(0.9, 5);
  });

  test('gives the chance that it was solved for, by drawing the two chi-squares and the normals', () => {
    const h = rinottConstant(5, 10, 0.1);
    const normal = normalDraws('rinott');
    const uniform = draws('rinott chi-square');
    const inverse = () => 9 / chiSquareQuantile(uniform(), 9);
    const USES = 40_000;
    let right = 0;
    for (let use = 0; use < USES; use++) {
      const own = inverse();
      let isRight = true;
      for (let rival = 0; rival < 4; rival++) {
        if (normal() > h / Math.sqrt(own + inverse())) isRight = false;
      }
      if (isRight) right++;
    }
    // Four standard errors: 4 √(0.9 · 0.1 / 40,000) = 0.006.
    expect(Math.abs(right / USES - 0.9)).toBeLessThan(0.006);
  });

  test('grows with the number of systems and the certainty, and shrinks with the first stage', () => {
    expect(rinottConstant(10, 20, 0.05)).toBeGreaterThan(rinottConstant(9, 20, 0.05));
    expect(rinottConstant(9, 20, 0.05)).toBeGreaterThan(rinottConstant(9, 20, 0.1));
    expect(rinottConstant(9, 10, 0.1)).toBeGreaterThan(rinottConstant(9, 20, 0.1));
    expect(() => rinottConstant(1, 20, 0.05)).toThrow('no constant');
    expect(() => rinottConstant(2, 2, 0.05)).toThrow('no constant');
  });
});
