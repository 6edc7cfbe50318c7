import { fixedSizeReplications } from '@buildweek/statistics';
import {
  type CandidatePlan,
  constraintValue,
  type ObservedPlans,
  observedTargets,
  planConstraints,
  type ReplicationExecutor,
  ruledOut,
} from '@buildweek/study';
import type { ScenarioFile } from '../src/files/scenario-file.ts';
import { observedDemo, questionOf } from './demo-plans.ts';
import { PROMISE } from './search-effort.ts';

/** Replications from which the size is reckoned, as many as the search takes before it calls a plan good. */
const FIRST_STAGE = 30;

/** What procedures take that fix the number of replications of every plan before they look at the answer. */
export interface FixedEffort {
  /**
   * Over all plans, each decided by the sign of its means. A sign errs, one tolerance away from the target, in at most
   * half of alpha over the plans: the smaller of the two shares that the search gives a test.
   */
  readonly everyPlan: number;
  /**
   * The least that keeps the promise: each side of a test has the share of alpha that the search gives it, and plans
   * are taken in order of cost up to the first that is called good.
   */
  readonly leanest: number;
  /** Those really played, for the variances. */
  readonly played: number;
  /** The plan at which the leanest one stops, by the means of the first stages. */
  readonly chosen: string | null;
}

/** Reckons them from a first stage of every plan that is not ruled out beforehand (C. Stein's two-stage rule). */
export async function fixedEffort(file: ScenarioFile, executor: ReplicationExecutor): Promise<FixedEffort> {
  const observed = await observedDemo(file, executor);
  const { plans, targets, firstTarget } = questionOf(file);
  const own = observedTargets(targets);
  const today = plans.find(({ isToday }) => isToday) as CandidatePlan;
  const constraints = planConstraints(own, firstTarget, await firstStage(observed, today));
  const candidates = plans.filter((plan) => ruledOut(plan, targets, file.reading.settings.weeks) === null);
  const { alpha, indifference } = PROMISE;
  const falseMet = alpha / 2 / candidates.length;
  const falseMissed = alpha / 2 / constraints.length;
  let everyPlan = 0;
  let leanest = 0;
  let chosen: string | null = null;
  for (const plan of candidates) {
    const observations = await firstStage(observed, plan);
    const values = constraints.map((constraint) =>
      observations.map((observation) => constraintValue(constraint, observation)),
    );
    // A plan needs as many as the target of it that needs most.
    everyPlan += Math.max(...values.map((one) => fixedSizeReplications(one, indifference, falseMet)));
    if (chosen !== null) continue;
    leanest += Math.max(
      ...values.map((one) => fixedSizeReplications(one, indifference, falseMet, falseMissed)),
    );
    if (values.every((one) => one.reduce((sum, value) => sum + value, 0) >= 0)) chosen = plan.name;
  }
  return { everyPlan, leanest, played: observed.replications, chosen };
}

async function firstStage(observed: ObservedPlans, plan: CandidatePlan): Promise<readonly Float64Array[]> {
  const observations = await observed.observe(plan, FIRST_STAGE);
  if (observations === null) throw new Error('Nobody stopped it.');
  return observations;
}
