import type { CountVariation, Lab, WordingVariation } from '@buildweek/model';
import { PLAN_ANSWER_VERSION, type PlanAnswer } from '@buildweek/results';
import {
  type CandidatePlan,
  candidatePlans,
  type MeasuresOfPlan,
  moneyMeasures,
  observedTargets,
  type PlanFindings,
  type PlanQuestion,
  standardMeasures,
  targetMeasures,
} from '@buildweek/study';
import type { ScenarioFile } from '../files/scenario-file.ts';
import { programVersion } from '../program-version.ts';
import { answeredScenario, planRun } from './plan-answer.ts';
import { planVariants } from './plan-variants.ts';
import type { PlanPlay } from './play-plans.ts';

/** What makes no difference, unless somebody says it: a share of the jobs. */
export const INDIFFERENT_SHARE = 0.02;
/** Share of uses in which a search may err. */
export const ALPHA = 0.05;

/** Everything that a search for a plan needs, before anything is played. */
export interface PlanSearchSetup {
  /** All plans of the scenario, in the order in which they are preferred. */
  readonly plans: readonly CandidatePlan[];
  readonly counts: readonly CountVariation[];
  readonly wordings: readonly WordingVariation[];
  /** The lab of the scenario first, then every way of wording it. */
  readonly labs: readonly [Lab, ...Lab[]];
  /** Standard measures, money, then the targets. */
  readonly measures: MeasuresOfPlan;
  readonly question: PlanQuestion;
}

/**
 * The plans that a scenario allows, and what is to be observed of each.
 * @throws Failure for bad input when a way of wording it is no scenario
 */
export function planSearchSetup(file: ScenarioFile, path: string, level: number): PlanSearchSetup {
  const { lab, targets, variations, economics } = file.reading;
  const counts = variations.filter((one) => one.kind === 'count');
  const wordings = variations.filter((one) => one.kind === 'wording');
  const variants = planVariants(file, path);
  const plans = candidatePlans(variants, counts);
  const own = observedTargets(targets);
  const standard = standardMeasures(plans.map((plan) => plan.lab));
  return {
    plans,
    counts,
    wordings,
    labs: [lab, ...variants.map((variant) => variant.lab)],
    // Other wording may have other prices, and a plan that is only shown may lie outside the ranges.
    measures: (one, plan) => {
      const money = moneyMeasures(one, plan.economics ?? null);
      return [...standard, ...money, ...targetMeasures(one, own)];
    },
    question: {
      plans,
      targets,
      counts,
      wordings,
      currency: economics?.currency ?? null,
      firstTarget: standard.length + moneyMeasures(lab, economics).length,
      level,
    },
  };
}

/** The document of a search. */
export function planAnswerOf(
  file: ScenarioFile,
  findings: PlanFindings,
  play: PlanPlay,
  warnings: readonly string[],
): PlanAnswer {
  return {
    format: 'buildweek plan',
    version: PLAN_ANSWER_VERSION,
    program: { name: 'buildweek', version: programVersion() },
    scenario: answeredScenario(file),
    currency: file.reading.economics?.currency ?? null,
    run: planRun(play, play.plans.replications),
    ...findings,
    warnings: [...warnings],
  };
}
