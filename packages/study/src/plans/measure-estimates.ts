import type { EstimateOrRefused, MeasureUnit } from '@buildweek/results';
import { estimateOver, type PairedDifference, pairedDifference, ratioInterval } from '@buildweek/statistics';
import { possible } from '../reduce/estimates.ts';
import type { Observation } from './observed-plans.ts';

/**
 * The long-run value of a measure with its interval, as far as the value can lie there: no measure is below 0.
 *
 * @param index position of the measure
 * @param most a bound that the true value cannot pass, as {@link mostOf} its unit
 */
export function measureEstimate(
  observations: readonly Observation[],
  index: number,
  level: number,
  most = Number.POSITIVE_INFINITY,
): EstimateOrRefused {
  const { numerators, denominators } = columns(observations, index);
  if (numerators.some((value) => value === Number.POSITIVE_INFINITY)) return beyondTheEnd(numerators);
  if (denominators.every((value) => value === 0))
    return { kind: 'refused', reason: 'There is nothing of it here.' };
  const estimate = estimateOver(observations.length, () => ratioInterval(numerators, denominators, level));
  return estimate.kind === 'estimate' ? possible(estimate, most) : estimate;
}

/** No share lies above 1; other measures know no bound. */
export function mostOf(unit: MeasureUnit): number {
  return unit === 'share' ? 1 : Number.POSITIVE_INFINITY;
}

/**
 * The difference of a measure between two plans on common random numbers, second minus first. A ratio is compared
 * through what each replication contributes to it (the residuals of the delta method, as in its own interval), so that
 * the difference is that of the two long-run values.
 */
export function measureDifference(
  first: readonly Observation[],
  second: readonly Observation[],
  index: number,
  level: number,
): { readonly difference: EstimateOrRefused; readonly paired: PairedDifference | null } {
  const replications = Math.min(first.length, second.length);
  const before = columns(first.slice(0, replications), index);
  const after = columns(second.slice(0, replications), index);
  const never = [before, after].find(({ numerators }) => numerators.includes(Number.POSITIVE_INFINITY));
  if (never !== undefined) return { difference: beyondTheEnd(never.numerators), paired: null };
  const [firstValues, secondValues] = [contributions(before), contributions(after)];
  if (firstValues === null || secondValues === null) {
    return { difference: { kind: 'refused', reason: 'One of the two has nothing of it.' }, paired: null };
  }
  let paired: PairedDifference | null = null;
  const difference = estimateOver(replications, () => {
    paired = pairedDifference(secondValues, firstValues, level);
    return { value: paired.value, low: paired.low, high: paired.high, level };
  });
  return { difference, paired };
}

/** What each replication contributes to a ratio of means: values whose mean is the ratio; null without a denominator. */
function contributions({ numerators, denominators }: Columns): Float64Array | null {
  const total = denominators.reduce((sum, value) => sum + value, 0);
  if (!(total > 0)) return null;
  const ratio = numerators.reduce((sum, value) => sum + value, 0) / total;
  const perReplication = total / denominators.length;
  return Float64Array.from(
    numerators,
    (numerator, replication) =>
      ratio + (numerator - ratio * (denominators[replication] ?? 0)) / perReplication,
  );
}

export interface Columns {
  readonly numerators: readonly number[];
  readonly denominators: readonly number[];
}

/** Numerators and denominators of one measure over the replications. */
export function columns(observations: readonly Observation[], index: number): Columns {
  return {
    numerators: observations.map((observation) => observation[2 * index] ?? 0),
    denominators: observations.map((observation) => observation[2 * index + 1] ?? 0),
  };
}

function beyondTheEnd(numerators: readonly number[]): EstimateOrRefused {
  const beyond = numerators.filter((value) => value === Number.POSITIVE_INFINITY).length;
  return {
    kind: 'never',
    reason: `In ${beyond} of ${numerators.length} replications it lies beyond the end of what was played.`,
  };
}
