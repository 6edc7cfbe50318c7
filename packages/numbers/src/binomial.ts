import { regularizedBeta } from './beta.ts';

/**
 * Probability of at most k successes in n independent trials of probability p. Relatively accurate in the
 * lower tail (to about 1e-12), where jstat 1.9.6 gives up below 1e-8.
 * Source: NIST Digital Library of Mathematical Functions, 8.17.5.
 * @throws RangeError unless n is a whole number of at least 0, k is a whole number and 0 ≤ p ≤ 1
 */
export function binomialCumulative(k: number, n: number, p: number): number {
  if (!(Number.isInteger(n) && n >= 0 && Number.isInteger(k) && p >= 0 && p <= 1)) {
    throw new RangeError(`The binomial distribution is not defined at k = ${k}, n = ${n}, p = ${p}`);
  }
  if (k < 0) return 0;
  if (k >= n) return 1;
  return regularizedBeta(1 - p, n - k, k + 1);
}
