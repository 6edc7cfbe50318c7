import { checkLevel } from './checks.ts';
import type { Interval } from './interval.ts';
import { meanInterval } from './mean-interval.ts';

/** Sections into which the observations are put for the intervals. */
const SECTIONS = 20;

/** Which share of what varies goes back to which factor. */
export interface ExplainedVariance {
  /** One for each factor. */
  readonly factors: readonly Interval[];
  /** All factors together: R squared of the regression. */
  readonly together: Interval;
}

/**
 * The share of the variance of an outcome that each of several independent factors explains by itself: the square of
 * its standardized coefficient in a linear regression. What is left is chance, and what factors do together or not in
 * proportion.
 * Source: A. Saltelli and others, Global Sensitivity Analysis: The Primer (2008), section 1.2.5 (from memory).
 *
 * The intervals are those of the jackknife over twenty sections of the observations: Student intervals of the
 * pseudo-values, cut off at 0 and 1. Source: S. Asmussen and P. W. Glynn, Stochastic Simulation (2007), section III.5
 * (from memory).
 *
 * @param factors one row for each observation, with one value for each factor
 * @param outcomes one for each observation
 * @throws RangeError for fewer observations than twenty for each factor and twenty more, or unless 0 < level < 1
 */
export function explainedVariance(
  factors: readonly (readonly number[])[],
  outcomes: readonly number[],
  level: number,
): ExplainedVariance {
  checkLevel(level);
  const count = factors[0]?.length ?? 0;
  if (outcomes.length !== factors.length || outcomes.length < SECTIONS * (count + 1)) {
    throw new RangeError(
      `${count} factors need at least ${SECTIONS * (count + 1)} observations, not ${outcomes.length}`,
    );
  }
  const whole = sharesOf(factors, outcomes);
  const pseudo = Array.from({ length: SECTIONS }, (_, section) => {
    const isKept = (_row: unknown, index: number): boolean => index % SECTIONS !== section;
    const without = sharesOf(factors.filter(isKept), outcomes.filter(isKept));
    return whole.map((share, index) => SECTIONS * share - (SECTIONS - 1) * (without[index] ?? 0));
  });
  const intervals = whole.map((value, index): Interval => {
    const { low, high } = meanInterval(
      pseudo.map((values) => values[index] ?? 0),
      level,
    );
    return { value, low: Math.min(value, Math.max(0, low)), high: Math.max(value, Math.min(1, high)), level };
  });
  return { factors: intervals.slice(0, count), together: intervals[count] as Interval };
}

/** Squared standardized coefficients, and R squared behind them; all 0 where nothing varies. */
function sharesOf(factors: readonly (readonly number[])[], outcomes: readonly number[]): number[] {
  const count = factors[0]?.length ?? 0;
  const columns = Array.from({ length: count }, (_, factor) =>
    standardized(factors.map((row) => row[factor] ?? 0)),
  );
  const outcome = standardized(outcomes);
  const products = columns.map((one) => columns.map((other) => meanProduct(one, other)));
  const effects = columns.map((one) => meanProduct(one, outcome));
  const coefficients = solve(products, effects);
  const explained = coefficients.reduce((sum, value, index) => sum + value * (effects[index] ?? 0), 0);
  return [...coefficients.map((value) => value * value), Math.min(1, Math.max(0, explained))];
}

/** Less the mean, over the standard deviation; zeros where nothing varies. */
function standardized(values: readonly number[]): Float64Array {
  const centre = values.reduce((sum, value) => sum + value, 0) / values.length;
  const spread = Math.sqrt(values.reduce((sum, value) => sum + (value - centre) ** 2, 0) / values.length);
  return Float64Array.from(values, (value) => (spread > 0 ? (value - centre) / spread : 0));
}

function meanProduct(one: Float64Array, other: Float64Array): number {
  return one.reduce((sum, value, index) => sum + value * (other[index] ?? 0), 0) / one.length;
}

/** Gaussian elimination with the largest pivot; a factor that does not vary gets 0. */
function solve(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const rows = matrix.map((row, index) => [...row, right[index] ?? 0]);
  const size = rows.length;
  const at = (row: number, column: number): number => rows[row]?.[column] ?? 0;
  for (let column = 0; column < size; column++) {
    let pivot = column;
    for (let row = column + 1; row < size; row++) {
      if (Math.abs(at(row, column)) > Math.abs(at(pivot, column))) pivot = row;
    }
    [rows[column], rows[pivot]] = [rows[pivot] as number[], rows[column] as number[]];
    if (Math.abs(at(column, column)) < SINGULAR) continue;
    for (let row = 0; row < size; row++) {
      if (row === column) continue;
      const share = at(row, column) / at(column, column);
      rows[row] = (rows[row] as number[]).map((value, index) => value - share * at(column, index));
    }
  }
  return rows.map((_, row) => (Math.abs(at(row, row)) < SINGULAR ? 0 : at(row, size) / at(row, row)));
}

const SINGULAR = 1e-12;
