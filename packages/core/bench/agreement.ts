/** Mean of nearly independent values, and its standard error. */
export interface MeanEstimate {
  readonly mean: number;
  readonly standardError: number;
}

/**
 * So many standard errors may lie between two means that are equal: for a normal distribution that is exceeded
 * once in twenty thousand comparisons.
 */
const FURTHEST = 4.05;
/** Half width of a 95 % interval in standard errors (normal quantile at 0.975). */
export const HALF_WIDTH = 1.96;

export function estimate(values: readonly number[]): MeanEstimate {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return { mean, standardError: Math.sqrt(squares / (values.length - 1) / values.length) };
}

/** How many standard errors lie between two estimates; a known value has a standard error of 0. */
export function distance(a: MeanEstimate, b: MeanEstimate): number {
  return Math.abs(a.mean - b.mean) / Math.hypot(a.standardError, b.standardError);
}

export function agree(a: MeanEstimate, b: MeanEstimate): boolean {
  return distance(a, b) <= FURTHEST;
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
}
