import type { ObservedTarget } from '../targets/observation.ts';
import { columns } from './measure-estimates.ts';
import type { Observation } from './observed-plans.ts';
import { askedShare } from './target-measures.ts';

/** A target as a constraint on a mean, E[Y] ≥ 0 with one Y for each replication. */
export interface PlanConstraint {
  readonly target: ObservedTarget;
  /** Position of its measure in the observations. */
  readonly measure: number;
  /** Jobs that are meant in an average period of today's plan; every plan has the same demand. */
  readonly usualDenominator: number;
  /** As in the statistics of feasibility. */
  readonly leastVariance: number;
}

/** A share that is met exactly must not fail by rounding. */
const ROUNDING = 1e-12;

/**
 * The constraints of a search.
 *
 * @param first position of the measure of the first target
 * @param today observations of today's plan, for the usual number of jobs
 */
export function planConstraints(
  targets: readonly ObservedTarget[],
  first: number,
  today: readonly Observation[],
): PlanConstraint[] {
  return targets.map((target, index) => {
    const measure = first + index;
    const { denominators } = columns(today, measure);
    const mean = denominators.reduce((sum, value) => sum + value, 0) / Math.max(1, denominators.length);
    const { meaning } = target;
    return {
      target,
      measure,
      usualDenominator: mean > 0 ? mean : 1,
      leastVariance: meaning.kind === 'long run' ? 0 : meaning.chance * (1 - meaning.chance),
    };
  });
}

/**
 * Y of one replication, a share of the jobs of an average period: how much more of them do what is asked than the
 * target wants. Its mean is at least 0 exactly when the ratio of means is at least the share. For hours in use the
 * hours that are counted differ from plan to plan, so it is the share of each replication itself. For the chance of a
 * period: 1 or 0 less the chance.
 */
export function constraintValue(
  { target, measure, usualDenominator }: PlanConstraint,
  observation: Observation,
): number {
  const numerator = observation[2 * measure] ?? 0;
  const denominator = observation[2 * measure + 1] ?? 0;
  const share = askedShare(target);
  const surplus = target.kind === 'busy' ? share * denominator - numerator : numerator - share * denominator;
  const { meaning } = target;
  if (meaning.kind !== 'long run') return (surplus >= -ROUNDING * denominator ? 1 : 0) - meaning.chance;
  if (target.kind === 'busy') return denominator === 0 ? share : surplus / denominator;
  return surplus / usualDenominator;
}
