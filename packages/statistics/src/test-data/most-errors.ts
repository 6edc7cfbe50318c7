import { binomialCumulative } from '@buildweek/numbers';

/**
 * The most errors in independent uses of a procedure that errs with at most the given chance: more come with a chance of
 * at most 0.001, exactly by the binomial distribution. It is 73 of 1,000 for 0.05.
 */
export function mostErrors(uses: number, chance: number): number {
  let most = Math.floor(uses * chance);
  while (binomialCumulative(most, uses, chance) < 0.999) most++;
  return most;
}
