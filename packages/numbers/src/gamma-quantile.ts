import { checkPositive, checkProbability } from './checks.ts';
import { gammapinv } from './jstat-inverses.ts';

/**
 * The value that a gamma variable of the given shape and scale 1 stays below with probability p, to about
 * 1e-8 relative (jstat 1.9.6); 0 where it is too small for a double.
 * @throws RangeError unless 0 < p < 1 and the shape is positive and finite
 */
export function gammaQuantile(p: number, shape: number): number {
  checkProbability(p);
  checkPositive('shape', shape);
  return gammapinv(p, shape);
}

/**
 * The value that chi-square with the given degrees of freedom stays below with probability p.
 * @throws RangeError unless 0 < p < 1 and the degrees of freedom are positive and finite
 */
export function chiSquareQuantile(p: number, degreesOfFreedom: number): number {
  checkPositive('degrees of freedom', degreesOfFreedom);
  return 2 * gammaQuantile(p, degreesOfFreedom / 2);
}
