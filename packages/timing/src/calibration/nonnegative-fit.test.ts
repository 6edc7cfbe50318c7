import { inverseNormal } from '@buildweek/numbers';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { draws } from '../test-data/draws.ts';
import { fitNonnegative } from './nonnegative-fit.ts';

describe('fitNonnegative', () => {
  it('finds the coefficients of values without error', () => {
    const columns = [
      [1, 2, 3, 4],
      [5, 1, 4, 2],
    ];
    const fit = fitNonnegative(
      columns,
      [11, 5, 12.5, 8].map((_, index) => 3 * columns[0][index] + 0.5 * columns[1][index]),
    );
    expect(fit?.coefficients[0]).toBeCloseTo(3, 10);
    expect(fit?.coefficients[1]).toBeCloseTo(0.5, 10);
    expect(fit?.degreesOfFreedom).toBe(2);
  });

  it('is the weighted mean of the ratios for a single column', () => {
    // With one column every relative error is measured / (b x) - 1, and b is the mean of measured / x.
    const fit = fitNonnegative([[1, 2, 4]], [1.1, 1.8, 4.4]);
    expect(fit?.coefficients[0]).toBeCloseTo((1.1 + 0.9 + 1.1) / 3, 10);
    // s = sd of ratio / b over two degrees of freedom, and its standard error s b / sqrt(3).
    const ratios = [1.1, 0.9, 1.1];
    const mean = 3.1 / 3;
    const deviation = Math.sqrt(ratios.reduce((sum, ratio) => sum + (ratio - mean) ** 2, 0) / 2);
    expect(fit?.errors[0]).toBeCloseTo(deviation / Math.sqrt(3), 10);
  });

  it('sets a coefficient to zero that would be below it', () => {
    const fit = fitNonnegative(
      [
        [1, 2, 3, 4],
        [1, 1, 1, 1],
      ],
      [0.5, 1.5, 2.5, 3.5],
    );
    expect(fit?.coefficients[1]).toBe(0);
    expect(fit?.errors[1]).toBeNull();
    expect(fit?.degreesOfFreedom).toBe(3);
  });

  // Karush, Kuhn and Tucker: the slope is zero where a coefficient is above zero, and up where it is zero.
  it('cannot be made better by moving a coefficient', () => {
    const value = fc.double({ min: 0.1, max: 10, noNaN: true });
    const builds = fc.array(fc.tuple(value, value, value, fc.double({ min: 0.6, max: 1.6, noNaN: true })), {
      minLength: 4,
      maxLength: 12,
    });
    const truths = fc.array(fc.double({ min: 0, max: 2, noNaN: true }), { minLength: 3, maxLength: 3 });
    fc.assert(
      fc.property(builds, truths, (rows, truth) => {
        const columns = [0, 1, 2].map((column) => rows.map((row) => row[column]));
        const measured = rows.map(
          (row) => row[3] * (0.1 + truth.reduce((sum, each, index) => sum + each * row[index], 0)),
        );
        const fit = fitNonnegative(columns, measured);
        fc.pre(fit !== null);
        for (const [index, column] of columns.entries()) {
          const terms = column.map((entry, build) => {
            const fitted = fit?.fitted[build] ?? Number.NaN;
            return (-entry * (measured[build] - fitted)) / fitted ** 2;
          });
          const size = terms.reduce((sum, term) => sum + Math.abs(term), 0);
          const slope = terms.reduce((sum, term) => sum + term, 0) / (size || 1);
          if ((fit?.coefficients[index] ?? 0) > 0) expect(Math.abs(slope)).toBeLessThan(1e-5);
          else expect(slope).toBeGreaterThan(-1e-5);
        }
      }),
      { seed: 3, numRuns: 200, endOnFailure: true },
    );
  });

  it('is right on average when every value has a lognormal factor of mean 1', () => {
    const draw = draws('factors of mean one');
    const spread = 0.3;
    const runs = 2000;
    const columns = [
      [1, 2, 3, 4, 5, 6, 7, 8],
      [8, 3, 6, 1, 7, 2, 5, 4],
    ];
    const sums = [0, 0];
    const squares = [0, 0];
    for (let run = 0; run < runs; run++) {
      const measured = columns[0].map(
        (value, build) =>
          (2 * value + columns[1][build]) * Math.exp(spread * inverseNormal(draw()) - spread ** 2 / 2),
      );
      const fit = fitNonnegative(columns, measured);
      for (const index of [0, 1]) {
        const coefficient = fit?.coefficients[index] ?? Number.NaN;
        sums[index] += coefficient;
        squares[index] += coefficient ** 2;
      }
    }
    for (const [index, truth] of [2, 1].entries()) {
      const mean = sums[index] / runs;
      const error = Math.sqrt((squares[index] / runs - mean ** 2) / runs);
      // Weights from the measured values would come out 17 % too small.
      expect(Math.abs(mean - truth)).toBeLessThan(4 * error + 0.01);
    }
  });

  it('says when columns cannot be told apart', () => {
    expect(
      fitNonnegative(
        [
          [1, 2, 3],
          [2, 4, 6],
        ],
        [1, 2, 3],
      ),
    ).toBeNull();
  });
});
