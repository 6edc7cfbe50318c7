import type { PlanDifference, ShownPlan, TargetOfPlan } from '@buildweek/results';
import type { ObservedTarget } from '../targets/observation.ts';
import { handBeside } from './hand-beside.ts';
import { differencesOf } from './measure-differences.ts';
import { measureEstimate, mostOf } from './measure-estimates.ts';
import type { Observation, ObservedPlans } from './observed-plans.ts';
import type { CandidatePlan } from './plan-space.ts';
import { askedShare, betterWay } from './target-measures.ts';

/** What is said of a plan besides what was observed. */
export type PlanRole = Pick<ShownPlan, 'role' | 'verdict' | 'why'>;

/** How plans are shown. */
export interface Showing {
  readonly observed: ObservedPlans;
  readonly targets: readonly ObservedTarget[];
  /** Position of the measure of the first target: those before it are shown as measures. */
  readonly firstTarget: number;
  readonly level: number;
  /** Measured weeks, over which a hand calculation averages. */
  readonly weeks: number;
}

/**
 * A plan with the values that its replications give, and its differences to the answer.
 *
 * @param observations of the plan, at least 20 for any interval
 * @param chosen observations of the answer, as many; null when there is none, or this is it
 * @param states verdict on each target
 */
export function shownPlan(
  plan: CandidatePlan,
  role: PlanRole,
  observations: readonly Observation[],
  chosen: readonly Observation[] | null,
  states: readonly TargetOfPlan['verdict'][],
  { observed, targets, firstTarget, level, weeks }: Showing,
): ShownPlan {
  const measures = observed.measuresOf(plan).slice(0, firstTarget);
  const differencesLevel = 1 - (1 - level) / Math.max(1, measures.length);
  return {
    name: plan.name,
    ...role,
    choices: plan.choices.map((choice) => ({ ...choice })),
    isToday: plan.isToday,
    committedCost: plan.committedCost,
    purchase: plan.purchase,
    replications: observations.length,
    targets: targets.map((target, index) => ({
      target: target.wording,
      asked: askedShare(target),
      better: betterWay(target),
      value: measureEstimate(observations, firstTarget + index, level, 1),
      verdict: states[index] ?? 'not tested',
    })),
    measures: measures.map(({ name, unit, better }, index) => ({
      name,
      unit,
      better,
      value: measureEstimate(observations, index, level, mostOf(unit)),
    })),
    handHours: handBeside(plan.lab, weeks).handHours,
    againstChosen: chosen === null ? [] : pairedWith(chosen, observations, measures, differencesLevel),
  };
}

function pairedWith(
  chosen: readonly Observation[],
  observations: readonly Observation[],
  measures: Parameters<typeof differencesOf>[0],
  level: number,
): PlanDifference[] {
  const both = Math.min(chosen.length, observations.length);
  return differencesOf(measures, chosen.slice(0, both), observations.slice(0, both), level);
}
