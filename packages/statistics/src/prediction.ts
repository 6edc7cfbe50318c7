import { checkLevel } from './checks.ts';
import {
  FEWEST_REPLICATIONS,
  type Never,
  type Prediction,
  type Refused,
  refused,
  tooFewReplications,
} from './interval.ts';

/**
 * What one future replication may bring: an interval that holds its value with at least the given probability,
 * whatever the distribution. It lies between the l-th smallest and the l-th largest of R independent values,
 * which hold the next with probability (R + 1 − 2 l) / (R + 1).
 * Source: G. J. Hahn and W. Q. Meeker, Statistical Intervals (1991), section 5.4.
 * @param values one for each replication, such as its own 90 % point; Infinity for one that never ends
 * @returns refused with fewer than 20 replications, or fewer than the level needs (19 for 0.9, 39 for 0.95);
 *   never when the upper limit is infinite
 * @throws RangeError when a value is not a number, or unless 0 < level < 1
 */
export function onePeriodInterval(values: ArrayLike<number>, level: number): Prediction | Refused | Never {
  checkLevel(level);
  const sorted = Float64Array.from(values).sort();
  if (sorted.some(Number.isNaN)) throw new RangeError('A replication without a value must be left out');
  const replications = sorted.length;
  if (replications < FEWEST_REPLICATIONS) return tooFewReplications(replications);
  // (R + 1) (1 − level) / 2 is meant exactly: 0.9 and R = 39 must give 2.
  const rank = Math.floor(((replications + 1) * (1 - level)) / 2 + 1e-9);
  if (rank < 1) {
    const needed = Math.ceil(2 / (1 - level) - 1 - 1e-9);
    return refused(
      `A range that holds one period with ${percent(level)} needs at least ${needed} replications; there are ${replications}.`,
    );
  }
  const low = sorted[rank - 1] as number;
  const high = sorted[replications - rank] as number;
  if (!Number.isFinite(high)) {
    return {
      kind: 'never',
      reason: `In at least ${rank} of ${replications} replications the value lies beyond the end of what was played.`,
    };
  }
  return { kind: 'prediction', low, high, level, replications };
}

function percent(level: number): string {
  return `${Number((100 * level).toPrecision(6))} %`;
}
