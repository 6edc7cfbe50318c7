import type { CountVariation, Target, WordingVariation } from '@buildweek/model';
import { type LookedPlan, type PlanAnswer, type ShownPlan, SPEED_MEASURE } from '@buildweek/results';
import { cautionsOf } from '../words/cautions.ts';
import { percentOf } from '../words/figures.ts';
import { bestMissed, explainPlan } from './explain-plan.ts';
import { findPlan, type PlanSearch, type PlanSearchSettings } from './find-plan.ts';
import { handBeside, handSentence } from './hand-beside.ts';
import { lonePersonSentences } from './lone-person.ts';
import type { ObservedPlans } from './observed-plans.ts';
import { planHeadline } from './plan-answer-words.ts';
import { type CandidatePlan, countIn } from './plan-space.ts';
import { variationName } from './variation-name.ts';

/** What a study says of a search: the answer without what only the reader of the scenario knows. */
export type PlanFindings = Pick<
  PlanAnswer,
  | 'question'
  | 'promise'
  | 'headline'
  | 'varied'
  | 'plans'
  | 'ruledOut'
  | 'notLookedAt'
  | 'chosen'
  | 'shown'
  | 'frontier'
  | 'looked'
  | 'handSentence'
  | 'fewestByHand'
  | 'handCalculation'
  | 'cautions'
>;

/** What a search is about. */
export interface PlanQuestion {
  /** In order of preference, as `candidatePlans` gives them. */
  readonly plans: readonly CandidatePlan[];
  readonly targets: readonly Target[];
  readonly counts: readonly CountVariation[];
  readonly wordings: readonly WordingVariation[];
  readonly currency: string | null;
  /** Position of the measure of the first target in the observations. */
  readonly firstTarget: number;
  /** Confidence level of intervals. */
  readonly level: number;
}

/** Finds the cheapest plan that meets the targets, and what stands around it; null when somebody stopped. */
export async function cheapestPlan(
  question: PlanQuestion,
  observed: ObservedPlans,
  settings: PlanSearchSettings,
): Promise<PlanFindings | null> {
  const { plans, targets, counts, firstTarget, level, currency } = question;
  const search = await findPlan(plans, targets, observed, firstTarget, settings);
  if (search === null) return null;
  const showing = { observed, targets: search.targets, firstTarget, level, weeks: settings.weeks };
  const shown = await explainPlan(search, plans, counts, showing);
  if (shown === null) return null;
  const { candidates, found } = search;
  const chosen = found.chosen === null ? null : (candidates[found.chosen] ?? null);
  const basis = chosen ?? bestMissed(search) ?? plans.find(({ isToday }) => isToday) ?? plans[0];
  const points = percentOf(settings.indifference);
  return {
    question: `Which is the cheapest plan that meets every target${currency === null ? ' (no money is stated: fewest people first, then machines, then stations)' : ''}?`,
    promise: `The search errs in at most ${percentOf(settings.alpha)} % of uses; a plan within ${points} percentage points of a target counts as right either way.`,
    headline: [
      ...planHeadline({
        shown,
        plans: plans.length,
        undecided: found.undecided.length,
        closest: bestMissed(search)?.name ?? null,
        leftOut: targets.filter(({ kind }) => kind === 'cost per part').map(({ wording }) => wording),
        currency,
      }),
      ...(chosen === null ? [] : lonePersonSentences(chosen.lab)),
    ],
    varied: variedWords(question),
    plans: plans.length,
    ruledOut: groupedReasons(search),
    notLookedAt: found.chosen === null ? 0 : candidates.length - found.chosen - 1,
    chosen: chosen?.name ?? null,
    shown,
    frontier: frontierOf(shown),
    looked: lookedOf(search),
    ...handOf(basis, shown, settings.weeks),
    cautions: basis === undefined ? [] : cautionsOf(basis.lab),
  };
}

/** The hand calculation of the answer, or of what comes closest. */
export function handOf(
  basis: CandidatePlan | undefined,
  shown: readonly ShownPlan[],
  weeks: number,
): Pick<PlanFindings, 'handSentence' | 'fewestByHand' | 'handCalculation'> {
  if (basis === undefined) return { handSentence: '', fewestByHand: [], handCalculation: [] };
  const { handHours, handCalculation, fewestByHand } = handBeside(basis.lab, weeks);
  const measures = shown.find(({ name }) => name === basis.name)?.measures ?? [];
  return { handSentence: handSentence(measures, handHours), fewestByHand, handCalculation };
}

/** What may vary, from where to where, and what is there today. */
export function variedWords({ counts, wordings, plans }: PlanQuestion): PlanAnswer['varied'] {
  const today = plans.find(({ isToday }) => isToday);
  const now = (what: string): string => today?.choices.find((choice) => choice.what === what)?.value ?? '';
  return [
    ...counts.map((variation) => ({
      what: variationName(variation),
      choices: `${variation.from} to ${variation.to}`,
      today: today === undefined ? '' : String(countIn(today.lab, variation)),
    })),
    ...wordings.map((variation) => {
      const what = variationName(variation);
      return { what, choices: variation.options.join(' or '), today: now(what) };
    }),
  ];
}

function groupedReasons({ ruledOut }: PlanSearch): PlanAnswer['ruledOut'] {
  const reasons = [...new Set(ruledOut.map(({ reason }) => reason))];
  return reasons.map((reason) => {
    const own = ruledOut.filter((one) => one.reason === reason);
    return { reason, plans: own.length, example: own[0]?.plan.name ?? '' };
  });
}

function lookedOf({ found, candidates, targets }: PlanSearch): LookedPlan[] {
  return found.looked.map(({ candidate, state, replications, failed }) => ({
    name: candidates[candidate]?.name ?? '',
    committedCost: candidates[candidate]?.committedCost ?? null,
    verdict: state,
    replications,
    by: failed === null ? '' : (targets[failed]?.wording ?? ''),
  }));
}

/** Plans of which no cheaper or equally dear one is faster, cheapest first. */
export function frontierOf(shown: readonly ShownPlan[]): string[] {
  const known = shown
    .flatMap((plan) => {
      const speed = plan.measures.find(({ name }) => name === SPEED_MEASURE)?.value;
      return plan.committedCost === null || speed?.kind !== 'estimate'
        ? []
        : [{ name: plan.name, cost: plan.committedCost, hours: speed.value }];
    })
    .sort((one, other) => one.cost - other.cost || one.hours - other.hours);
  let fastest = Number.POSITIVE_INFINITY;
  return known.flatMap(({ name, hours }) => {
    if (hours >= fastest) return [];
    fastest = hours;
    return [name];
  });
}
