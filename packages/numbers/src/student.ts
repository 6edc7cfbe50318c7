import { logBeta, regularizedBeta } from './beta.ts';
import { checkPositive, checkProbability } from './checks.ts';
import { studentInverse } from './jstat-inverses.ts';
import { inverseNormal } from './normal.ts';

/** From here up jstat 1.9.6 falls off (1.5e-3 wrong at 1e8), and the expansion below is good to 1e-13. */
const EXPANSION_FROM = 1e5;

/**
 * Probability that Student's t with the given degrees of freedom stays below t; the lower tail is relatively
 * accurate far out too.
 * Source: NIST Digital Library of Mathematical Functions, 8.17(i), by the incomplete beta function.
 * @throws RangeError when t is not a number, or the degrees of freedom are not positive and finite
 */
export function studentCumulative(t: number, degreesOfFreedom: number): number {
  checkPositive('degrees of freedom', degreesOfFreedom);
  if (Number.isNaN(t)) throw new RangeError('t is not a number');
  const ratio = (t * t) / degreesOfFreedom;
  if (Math.abs(t) < 1) {
    const inner = 0.5 * regularizedBeta(ratio / (1 + ratio), 0.5, degreesOfFreedom / 2);
    return t < 0 ? 0.5 - inner : 0.5 + inner;
  }
  const outer = 0.5 * regularizedBeta(1 / (1 + ratio), degreesOfFreedom / 2, 0.5);
  return t < 0 ? outer : 1 - outer;
}

/**
 * The value that Student's t with the given degrees of freedom stays below with probability p, to about 1e-12
 * relative: jstat 1.9.6, which is good to 6e-8, and one step of Newton. With very many degrees of freedom the
 * expansion about the normal quantile: M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions,
 * 26.7.5.
 * @throws RangeError unless 0 < p < 1 and the degrees of freedom are positive and finite
 */
export function studentQuantile(p: number, degreesOfFreedom: number): number {
  checkProbability(p);
  checkPositive('degrees of freedom', degreesOfFreedom);
  if (p === 0.5) return 0;
  if (degreesOfFreedom >= EXPANSION_FROM) return expansion(inverseNormal(p), degreesOfFreedom);
  const t = studentInverse(p, degreesOfFreedom);
  const step = (studentCumulative(t, degreesOfFreedom) - p) / density(t, degreesOfFreedom);
  // Far out, where the upper tail has no digits left, the step is noise and not a correction.
  return Math.abs(step) < 1e-5 * Math.abs(t) ? t - step : t;
}

function expansion(z: number, degreesOfFreedom: number): number {
  const square = z * z;
  const first = (z * (square + 1)) / 4;
  const second = (z * ((5 * square + 16) * square + 3)) / 96;
  return z + (first + second / degreesOfFreedom) / degreesOfFreedom;
}

function density(t: number, degreesOfFreedom: number): number {
  const exponent =
    -((degreesOfFreedom + 1) / 2) * Math.log1p((t * t) / degreesOfFreedom) -
    logBeta(0.5, degreesOfFreedom / 2);
  return Math.exp(exponent) / Math.sqrt(degreesOfFreedom);
}
