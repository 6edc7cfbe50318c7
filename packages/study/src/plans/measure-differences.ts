import type { EstimateOrRefused, PlanDifference } from '@buildweek/results';
import type { PairedDifference } from '@buildweek/statistics';
import { columns, measureDifference } from './measure-estimates.ts';
import type { Observation } from './observed-plans.ts';
import type { ReplicationMeasure } from './replication-measure.ts';

/**
 * The difference of every measure between two plans on common random numbers, second less first, and whether it is for
 * the better.
 *
 * @param level of each single difference
 */
export function differencesOf(
  measures: readonly ReplicationMeasure[],
  first: readonly Observation[],
  second: readonly Observation[],
  level: number,
): PlanDifference[] {
  return measures.map((measure, index) => {
    const { difference, paired } = measureDifference(first, second, index, level);
    const isSame = areAlike(first, second, index);
    return {
      measure: measure.name,
      difference,
      outcome: isSame ? 'no difference' : outcomeOf(measure, difference),
      gain: isSame ? null : gainOf(paired),
    };
  });
}

function outcomeOf({ better }: ReplicationMeasure, difference: EstimateOrRefused): PlanDifference['outcome'] {
  if (difference.kind !== 'estimate') return 'not compared';
  if (difference.low <= 0 && difference.high >= 0) return 'not told apart';
  const isMore = difference.value > 0;
  if (better === 'neither') return isMore ? 'more' : 'less';
  return isMore === (better === 'higher') ? 'better' : 'worse';
}

function gainOf(paired: PairedDifference | null): number | null {
  return paired !== null && Number.isFinite(paired.varianceReduction) ? paired.varianceReduction : null;
}

function areAlike(first: readonly Observation[], second: readonly Observation[], index: number): boolean {
  const [before, after] = [columns(first, index), columns(second, index)];
  return before.numerators.every(
    (value, replication) =>
      value === after.numerators[replication] &&
      before.denominators[replication] === after.denominators[replication],
  );
}
