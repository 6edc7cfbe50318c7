import { gammaQuantile, logGamma } from '@buildweek/numbers';
import { maximize } from '../durations/maximize.ts';
import type { Interval } from '../interval.ts';

/** Events counted over an exposure. */
export interface CountedEvents {
  readonly count: number;
  readonly exposure: number;
}

const LARGEST_SHAPE = 1e5;

/**
 * Rates of several blocks, drawn towards their common mean by as much as the counts cannot tell them apart: the gamma law
 * of the rates is estimated from all counts together (empirical Bayes), each block then has the gamma law that its own
 * count leaves.
 * Source: B. P. Carlin and T. A. Louis, Bayes and Empirical Bayes Methods for Data Analysis (2000), section 3.3 (from
 * memory); the likelihood is that of negative binomial counts.
 *
 * @param level of the central intervals
 * @returns rates in the order of the blocks; all 0 where nothing was counted
 */
export function shrunkenRates(blocks: readonly CountedEvents[], level: number): Interval[] {
  const events = blocks.reduce((sum, { count }) => sum + count, 0);
  const exposure = blocks.reduce((sum, block) => sum + block.exposure, 0);
  if (events === 0) return blocks.map(() => ({ value: 0, low: 0, high: 0, level }));
  const common = events / exposure;
  const { at } = maximize(
    (log) => likelihoodOf(blocks, common, Math.exp(log)),
    Math.log(1e-3),
    Math.log(LARGEST_SHAPE),
    1e-8,
  );
  const shape = Math.exp(at);
  const tail = (1 - level) / 2;
  return blocks.map(({ count, exposure: own }) => {
    const [posterior, rate] = [shape + count, shape / common + own];
    return {
      value: posterior / rate,
      low: gammaQuantile(tail, posterior) / rate,
      high: gammaQuantile(1 - tail, posterior) / rate,
      level,
    };
  });
}

/** Logarithm of the likelihood of all counts when rates are gamma with a mean and a shape. */
function likelihoodOf(blocks: readonly CountedEvents[], common: number, shape: number): number {
  return blocks.reduce((total, { count, exposure }) => {
    const mean = common * exposure;
    return (
      total +
      logGamma(shape + count) -
      logGamma(shape) +
      shape * Math.log(shape / (shape + mean)) +
      (count === 0 ? 0 : count * Math.log(mean / (shape + mean)))
    );
  }, 0);
}
