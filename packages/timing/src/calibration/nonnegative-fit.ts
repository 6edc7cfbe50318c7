import { inverseOfSymmetric } from './symmetric.ts';

/** A fit of y by columns whose coefficients are not below zero. */
export interface NonnegativeFit {
  readonly coefficients: readonly number[];
  readonly fitted: readonly number[];
  /** Sum of the squares of (measured - fitted) / fitted. */
  readonly deviance: number;
  /** Measured values less coefficients above zero. */
  readonly degreesOfFreedom: number;
  /** Standard errors; null for a coefficient that ended at zero. */
  readonly errors: readonly (number | null)[];
}

/** With errors of 10 % the weights settle in some 40 rounds, with 50 % it may take hundreds. */
const MOST_ROUNDS = 500;
const SETTLED = 1e-11;

/**
 * Least squares of the relative errors, (measured - fitted) / fitted, with coefficients from zero up. The weights
 * are taken from the fit and not from the measured values, since those would draw the fit down: with a factor of
 * mean 1 on every value the coefficients are right on average.
 * Source: P. McCullagh and J. A. Nelder, Generalized Linear Models, second edition, section 8.3 (constant coefficient
 * of variation, identity link) for the weights; with at most three columns, every set of coefficients above zero is
 * tried, which is exact.
 * @param columns one row of values for each coefficient; above zero somewhere
 * @param measured above zero
 * @returns null when the columns cannot be told apart
 */
export function fitNonnegative(
  columns: readonly (readonly number[])[],
  measured: readonly number[],
): NonnegativeFit | null {
  let scales: readonly number[] = measured;
  let best = bestSubset(columns, measured, scales);
  for (let round = 0; best !== null && round < MOST_ROUNDS; round++) {
    const values = valuesOf(columns, best.coefficients);
    const change = values.reduce(
      (most, value, index) => Math.max(most, Math.abs(value / scales[index] - 1)),
      0,
    );
    // Half of the way, since whole steps may go to and fro for ever where the columns suit the values badly.
    scales = values.map((value, index) => Math.sqrt(value * scales[index]));
    best = bestSubset(columns, measured, scales);
    if (change < SETTLED) break;
  }
  if (best === null) return null;
  const fitted = valuesOf(columns, best.coefficients);
  const deviance = devianceOf(measured, fitted, fitted);
  const degreesOfFreedom = measured.length - best.coefficients.filter((value) => value > 0).length;
  const scale = degreesOfFreedom > 0 ? Math.sqrt(deviance / degreesOfFreedom) : Number.NaN;
  return {
    coefficients: best.coefficients,
    fitted,
    deviance,
    degreesOfFreedom,
    errors: best.variances.map((variance) => (variance === null ? null : scale * Math.sqrt(variance))),
  };
}

interface Subset {
  readonly coefficients: readonly number[];
  readonly variances: readonly (number | null)[];
}

/** The best of all sets of columns whose coefficients all come out above zero. */
function bestSubset(
  columns: readonly (readonly number[])[],
  measured: readonly number[],
  scales: readonly number[],
): Subset | null {
  let best: Subset | null = null;
  let bestDeviance = Number.POSITIVE_INFINITY;
  for (let set = 1; set < 1 << columns.length; set++) {
    const chosen = columns.map((_, index) => index).filter((index) => (set >> index) & 1);
    const matrix = chosen.map((row) =>
      chosen.map((column) => product(columns[row], columns[column], scales)),
    );
    const inverse = inverseOfSymmetric(matrix);
    if (inverse === null) {
      if (chosen.length === columns.length) return null;
      continue;
    }
    const sides = chosen.map((row) => product(columns[row], measured, scales));
    const solution = inverse.map((row) => row.reduce((sum, value, index) => sum + value * sides[index], 0));
    if (solution.some((value) => !(value > 0))) continue;
    const coefficients = columns.map((_, index) =>
      chosen.includes(index) ? solution[chosen.indexOf(index)] : 0,
    );
    const values = valuesOf(columns, coefficients);
    // A build of no hours cannot be: there is no factor that makes the measured hours of it.
    if (values.some((value) => !(value > 0))) continue;
    const deviance = devianceOf(measured, values, scales);
    if (deviance < bestDeviance) {
      bestDeviance = deviance;
      best = {
        coefficients,
        variances: columns.map((_, index) => {
          const position = chosen.indexOf(index);
          return position < 0 ? null : inverse[position][position];
        }),
      };
    }
  }
  return best;
}

function product(first: readonly number[], second: readonly number[], scales: readonly number[]): number {
  return first.reduce((sum, value, index) => sum + (value * second[index]) / scales[index] ** 2, 0);
}

function valuesOf(columns: readonly (readonly number[])[], coefficients: readonly number[]): number[] {
  return columns[0].map((_, index) =>
    columns.reduce((sum, column, position) => sum + column[index] * coefficients[position], 0),
  );
}

function devianceOf(
  measured: readonly number[],
  values: readonly number[],
  scales: readonly number[],
): number {
  return measured.reduce((sum, value, index) => sum + ((value - values[index]) / scales[index]) ** 2, 0);
}
