import type { EstimateOrRefused, PromisedDate } from '@buildweek/results';
import {
  clopperPearsonInterval,
  estimateOver,
  fewestForPrediction,
  meanInterval,
  predictionRank,
} from '@buildweek/statistics';
import type { LabMoments } from './lab-moments.ts';

/** Probabilities that are answered for. */
export const PROMISED = [0.5, 0.8, 0.9, 0.95];
/** Level of all intervals beside the dates. */
export const PROMISE_LEVEL = 0.95;

/**
 * The dates to promise: order statistics of the plays, of which one more play stays below with at least the
 * probability that is stated.
 *
 * @param endings elapsed milliseconds at which the job ended, one for each play; Infinity: not before the cap
 * @param lastWeeks weeks after which a play ended
 */
export function promisedDates(
  endings: ArrayLike<number>,
  moments: LabMoments,
  lastWeeks: number,
): PromisedDate[] {
  const sorted = Float64Array.from(endings).sort();
  return PROMISED.map((probability): PromisedDate => {
    const nothing = { probability, ready: null, promise: null };
    const rank = predictionRank(probability, sorted.length);
    if (rank === null) {
      return {
        ...nothing,
        refused: `${asPercent(probability)} needs at least ${fewestForPrediction(probability)} plays; there are ${sorted.length}.`,
      };
    }
    const ready = sorted[rank - 1] as number;
    if (!Number.isFinite(ready)) {
      return {
        ...nothing,
        refused: `It is later than the ${lastWeeks} weeks that are looked ahead; give more of them.`,
      };
    }
    const closing = moments.closingFrom(ready);
    return {
      probability,
      ready: moments.moment(ready),
      promise: Number.isFinite(closing) ? moments.moment(closing) : null,
      refused: null,
    };
  });
}

/** How likely it is that a job ends by a time. @param endings one for each play */
export function chanceBy(endings: ArrayLike<number>, time: number): EstimateOrRefused {
  const kept = Array.from(endings).filter((ended) => ended <= time).length;
  return estimateOver(endings.length, () => clopperPearsonInterval(kept, endings.length, PROMISE_LEVEL));
}

/** Mean of values over the plays, or why there is none. */
export function meanOver(values: readonly number[]): EstimateOrRefused {
  const endless = values.filter((value) => !Number.isFinite(value)).length;
  if (endless > 0) {
    return {
      kind: 'never',
      reason: `In ${endless} of ${values.length} plays it is not finished before they end.`,
    };
  }
  return estimateOver(values.length, () => meanInterval(values, PROMISE_LEVEL));
}

function asPercent(share: number): string {
  return `${Math.round(share * 100)} %`;
}
