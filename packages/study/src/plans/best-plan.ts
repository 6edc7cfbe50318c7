import type { Target } from '@buildweek/model';
import { bareMoneyText, type LookedPlan, type ShownPlan, WHOLE } from '@buildweek/results';
import { type KimNelsonChoice, kimNelson } from '@buildweek/statistics';
import { cautionsOf } from '../words/cautions.ts';
import { percentOf } from '../words/figures.ts';
import { BEST_MEASURES, type BestMeasure } from './best-measures.ts';
import { bestHeadline } from './best-plan-words.ts';
import { lonePersonSentences } from './lone-person.ts';
import { columns } from './measure-estimates.ts';
import type { Observation, ObservedPlans } from './observed-plans.ts';
import { frontierOf, handOf, type PlanFindings, type PlanQuestion, variedWords } from './plan-answer.ts';
import type { CandidatePlan } from './plan-space.ts';
import { ruledOut } from './ruled-out.ts';
import { shownPlan } from './shown-plan.ts';
import { observedTargets } from './target-measures.ts';
import { UnanswerableError } from './unanswerable-error.ts';

export interface BestPlanSettings {
  readonly by: BestMeasure;
  /** What a plan may cost in a year; null: only the budgets among the targets hold. */
  readonly budget: number | null;
  /** For late jobs a share of the jobs; for the time a share of today's. */
  readonly indifference: number;
  readonly alpha: number;
  /** Replications after which what is left stays undecided. */
  readonly most: number;
  readonly weeks: number;
  /** Weeks that are played in all: a time beyond them counts as long as they are. */
  readonly playedWeeks: number;
}

/** Fewer give variances that are worth little: what a test then needs more, of many plans, is more than this saves. */
const FIRST_STAGE = 20;
const BATCH = 10;
const SHOWN_REPLICATIONS = 40;
const NEAR_MISSES = 5;
const HOURS_PER_WEEK = 168;

/**
 * Finds the best plan within a budget by the procedure of Kim and Nelson on common random numbers: all plans are
 * played side by side, and whoever is clearly beaten is played no further. How sure that is, `kimNelson` says.
 *
 * @returns null when somebody stopped
 * @throws UnanswerableError when no plan is within the budget, or nothing can be late
 */
export async function bestPlan(
  question: PlanQuestion,
  observed: ObservedPlans,
  settings: BestPlanSettings,
): Promise<PlanFindings | null> {
  const { plans, targets, currency, level, firstTarget } = question;
  const budgets = targets.filter(({ kind }) => kind === 'budget');
  const within = plans.filter((plan) => affordable(plan, budgets, settings));
  if (within.length === 0)
    throw new UnanswerableError(
      `No plan in the range is within the budget${cheapestWords(plans, currency)}. Widen the ranges downwards, or the budget.`,
    );
  const value = await measureOf(question, observed, settings);
  if (value === null) return null;
  const choice: KimNelsonChoice =
    within.length === 1
      ? ONLY_ONE
      : await kimNelson(
          {
            systems: within.length,
            alpha: settings.alpha,
            tolerance: value.tolerance,
            firstStage: FIRST_STAGE,
            batch: BATCH,
            most: settings.most,
          },
          async (system, from, to) => {
            const found = await observed.observe(within[system] as CandidatePlan, to);
            return found === null ? null : found.slice(from).map(value.of);
          },
        );
  if (choice.isStopped) return null;
  const shown = await shownPlans(question, within, choice, observed, level, firstTarget, settings.weeks);
  if (shown === null) return null;
  const chosen = choice.chosen === null ? null : (within[choice.chosen] ?? null);
  const basis = chosen ?? within[choice.left[0] ?? 0];
  const { words } = BEST_MEASURES[settings.by];
  const unit = settings.by === 'late' ? 'percentage points' : '% of the time of today’s plan';
  return {
    question: `Which plan has ${words}${budgetWords(settings, currency)}?`,
    promise: `The choice errs in at most ${percentOf(settings.alpha)} % of uses; a plan within ${percentOf(settings.indifference)} ${unit} of the best counts as right.`,
    headline: [
      ...bestHeadline({
        shown,
        plans: within.length,
        left: choice.left.length,
        by: settings.by,
        currency,
      }),
      ...(chosen === null ? [] : lonePersonSentences(chosen.lab)),
    ],
    varied: variedWords(question),
    plans: plans.length,
    ruledOut:
      within.length === plans.length
        ? []
        : [
            {
              reason: 'is beyond the budget',
              plans: plans.length - within.length,
              example: plans.find((plan) => !within.includes(plan))?.name ?? '',
            },
          ],
    notLookedAt: 0,
    chosen: chosen?.name ?? null,
    shown,
    frontier: frontierOf(shown),
    looked: within.length === 1 ? [] : lookedOf(within, choice),
    ...handOf(basis, shown, settings.weeks),
    cautions: basis === undefined ? [] : cautionsOf(basis.lab),
  };
}

const ONLY_ONE: KimNelsonChoice = {
  chosen: 0,
  left: [0],
  eliminations: [],
  played: [],
  replications: 0,
  isStopped: false,
};

function affordable(
  plan: CandidatePlan,
  budgets: readonly Target[],
  { budget, weeks }: BestPlanSettings,
): boolean {
  if (budget !== null && (plan.committedCost ?? 0) > budget) return false;
  return ruledOut(plan, budgets, weeks) === null;
}

/** The value of a replication that is to be small, and the difference in it that does not matter. */
async function measureOf(
  { plans }: PlanQuestion,
  observed: ObservedPlans,
  { by, indifference, playedWeeks }: BestPlanSettings,
): Promise<{ readonly of: (observation: Observation) => number; readonly tolerance: number } | null> {
  const today = plans.find(({ isToday }) => isToday) ?? (plans[0] as CandidatePlan);
  const index = observed.measuresOf(today).findIndex(({ name }) => name === BEST_MEASURES[by].measure);
  if (index < 0)
    throw new UnanswerableError('No job has a promise, so that none can be late: take --best p90.');
  const usual = await observed.observe(today, FIRST_STAGE);
  if (usual === null) return null;
  const { numerators, denominators } = columns(usual, index);
  const mean = (values: readonly number[]): number =>
    values.reduce((sum, value) => sum + value, 0) / values.length;
  if (by === 'late') {
    const promised = Math.max(1, mean(denominators));
    return {
      of: (observation) => ((observation[2 * index + 1] ?? 0) - (observation[2 * index] ?? 0)) / promised,
      tolerance: indifference,
    };
  }
  const longest = playedWeeks * HOURS_PER_WEEK;
  const capped = (hours: number): number => Math.min(hours, longest);
  return {
    of: (observation) => capped(observation[2 * index] ?? 0),
    tolerance: indifference * mean(numerators.map(capped)),
  };
}

async function shownPlans(
  { plans, targets }: PlanQuestion,
  within: readonly CandidatePlan[],
  { chosen, left, eliminations }: KimNelsonChoice,
  observed: ObservedPlans,
  level: number,
  firstTarget: number,
  weeks: number,
): Promise<ShownPlan[] | null> {
  const showing = { observed, targets: observedTargets(targets), firstTarget, level, weeks };
  const last = [...eliminations].reverse().slice(0, NEAR_MISSES);
  const today = plans.find(({ isToday }) => isToday);
  const asked = [
    ...left.map((system) => ({
      plan: within[system],
      role: system === chosen ? ('chosen' as const) : ('undecided' as const),
      why: system === chosen ? '' : 'could not be told apart from the best',
    })),
    { plan: today, role: 'today' as const, why: '' },
    ...last.map(({ system, by }) => ({
      plan: within[system],
      role: 'near miss' as const,
      why: `is beaten by “${within[by]?.name ?? ''}”`,
    })),
  ];
  const shown: ShownPlan[] = [];
  let ofChosen: readonly Observation[] | null = null;
  for (const { plan, role, why } of asked) {
    if (plan === undefined || shown.some(({ name }) => name === plan.name)) continue;
    const observations = await observed.observe(plan, SHOWN_REPLICATIONS);
    if (observations === null) return null;
    const said = { role, verdict: 'not tested' as const, why };
    shown.push(shownPlan(plan, said, observations, ofChosen, [], showing));
    if (role === 'chosen') ofChosen = observations;
  }
  return shown;
}

function lookedOf(
  within: readonly CandidatePlan[],
  { eliminations, left, played }: KimNelsonChoice,
): LookedPlan[] {
  const of = (system: number) => ({
    name: within[system]?.name ?? '',
    committedCost: within[system]?.committedCost ?? null,
    replications: played[system]?.replications ?? 0,
  });
  return [
    ...left.map((system): LookedPlan => ({ ...of(system), verdict: 'left', by: '' })),
    ...[...eliminations]
      .reverse()
      .map(
        ({ system, by }): LookedPlan => ({ ...of(system), verdict: 'beaten', by: within[by]?.name ?? '' }),
      ),
  ];
}

/** What the least is that has to be spent, by either measure that a budget may speak of. */
function cheapestWords(plans: readonly CandidatePlan[], currency: string | null): string {
  const least = (of: (plan: CandidatePlan) => number | null): string =>
    `${bareMoneyText(Math.min(...plans.map((plan) => of(plan) ?? 0)), WHOLE)} ${currency ?? ''}`;
  return `: the least is ${least(({ committedCost }) => committedCost)} a year, and ${least(({ purchase }) => purchase)} for purchases`;
}

function budgetWords({ budget }: BestPlanSettings, currency: string | null): string {
  return budget === null
    ? ' within the budget'
    : ` for at most ${bareMoneyText(budget, WHOLE)} ${currency ?? ''} a year`;
}
