import type { Target } from '@buildweek/model';
import { type CheapestFeasible, cheapestFeasible } from '@buildweek/statistics';
import type { ObservedTarget } from '../targets/observation.ts';
import type { ObservedPlans } from './observed-plans.ts';
import { constraintValue, type PlanConstraint, planConstraints } from './plan-constraints.ts';
import type { CandidatePlan } from './plan-space.ts';
import { ruledOut } from './ruled-out.ts';
import { observedTargets } from './target-measures.ts';

/** How a search goes about it. */
export interface PlanSearchSettings {
  /** Distance of a share from its target within which a plan counts as right either way, 0.02 for 2 points. */
  readonly indifference: number;
  /** Share of uses in which the answer may be wrong. */
  readonly alpha: number;
  /** Replications after which a plan is left undecided. */
  readonly most: number;
  /** Measured weeks, over which demand is averaged. */
  readonly weeks: number;
}

/** A plan that was discarded before it was played. */
interface RuledOutPlan {
  readonly plan: CandidatePlan;
  readonly reason: string;
}

/** What a search found. */
export interface PlanSearch {
  readonly targets: readonly ObservedTarget[];
  readonly constraints: readonly PlanConstraint[];
  readonly ruledOut: readonly RuledOutPlan[];
  /** Plans that were left, in order of cost; the search refers to them by position. */
  readonly candidates: readonly CandidatePlan[];
  readonly found: CheapestFeasible;
}

/**
 * A plan is called missed after so many replications at the earliest, and met after so many. Quarters with few late
 * jobs are alike and the bad ones are rare, so a small first stage that looks good also varies little, and the test,
 * which is exact for normal values, would call it met too often: `how-many` among the long records measures it.
 */
const FIRST_STAGE = { met: 60, missed: 10 } as const;
/** Replications that are played at a time. */
const BATCH = 10;
/** Fewer replications of a plan than this leave a search no room to decide anything behind its first stage. */
export const FEWEST_REPLICATIONS: number = FIRST_STAGE.met + BATCH;

/**
 * Looks for the cheapest plan that meets all targets: goes up in order of cost and tests one after the other on common
 * random numbers, until one is known to meet them. How sure that is, `cheapestFeasible` says.
 *
 * @param plans in order of cost, today's among them
 * @param firstMeasure position of the measure of the first target in the observations
 * @returns null when somebody stopped
 * @throws RangeError when no target is one that a replication says something about
 */
export async function findPlan(
  plans: readonly CandidatePlan[],
  targets: readonly Target[],
  observed: ObservedPlans,
  firstMeasure: number,
  settings: PlanSearchSettings,
): Promise<PlanSearch | null> {
  const own = observedTargets(targets);
  const discarded = plans.flatMap((plan): RuledOutPlan[] => {
    const reason = ruledOut(plan, targets, settings.weeks);
    return reason === null ? [] : [{ plan, reason }];
  });
  const names = new Set(discarded.map(({ plan }) => plan.name));
  const candidates = plans.filter(({ name }) => !names.has(name));
  const today = plans.find(({ isToday }) => isToday);
  const basis = today ?? candidates[0];
  const usual = basis === undefined ? [] : await observed.observe(basis, FIRST_STAGE.missed);
  if (usual === null) return null;
  const constraints = planConstraints(own, firstMeasure, usual);
  if (candidates.length === 0) {
    return { targets: own, constraints, ruledOut: discarded, candidates, found: NOTHING_FOUND };
  }
  const found = await cheapestFeasible(
    {
      candidates: candidates.length,
      tolerances: own.map(() => settings.indifference),
      leastVariances: constraints.map(({ leastVariance }) => leastVariance),
      alpha: settings.alpha,
      firstStage: FIRST_STAGE,
      batch: BATCH,
      most: settings.most,
    },
    async (candidate, from, to) => {
      const observations = await observed.observe(candidates[candidate] as CandidatePlan, to);
      return (
        observations
          ?.slice(from)
          .map((observation) => constraints.map((constraint) => constraintValue(constraint, observation))) ??
        null
      );
    },
  );
  if (found.isStopped) return null;
  return { targets: own, constraints, ruledOut: discarded, candidates, found };
}

const NOTHING_FOUND: CheapestFeasible = {
  chosen: null,
  undecided: [],
  looked: [],
  replications: 0,
  isStopped: false,
};
