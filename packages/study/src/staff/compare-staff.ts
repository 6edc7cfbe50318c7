import { HOURS_PER_WEEK } from '@buildweek/core';
import type { StaffRules } from '@buildweek/model';
import type { PlanDifference, StaffAnswer, StaffPlan } from '@buildweek/results';
import { individualLevel } from '@buildweek/statistics';
import { measuresOf } from '../plans/compare-plans.ts';
import { handBeside, handSentence } from '../plans/hand-beside.ts';
import { differencesOf } from '../plans/measure-differences.ts';
import type { Observation, ObservedPlans } from '../plans/observed-plans.ts';
import type { Plan } from '../plans/plan.ts';
import { type Duties, dutiesOf, dutyHours, personsByHour } from './duties.ts';
import { ruleBreaches } from './rule-breaches.ts';
import { firstHourOf, type StaffMeasures } from './staff-measures.ts';
import { decidingMeasure, isBetter } from './staff-order.ts';
import { staffVerdict } from './staff-words.ts';

/** A way of staffing that can be played. */
export interface StaffPlanAsked
  extends Plan,
    Pick<StaffPlan, 'origin' | 'meaning' | 'scenario' | 'costPerYear'> {
  readonly changes: readonly string[];
}

export interface StaffQuestion {
  /** The lab as it is first, then the options. */
  readonly plans: readonly StaffPlanAsked[];
  readonly observed: ObservedPlans;
  readonly measures: StaffMeasures;
  readonly rules: StaffRules;
  /** Measured weeks. */
  readonly weeks: number;
  /** Of each plan, at least 20. */
  readonly replications: number;
  readonly level: number;
  readonly currency: string | null;
}

/** What comes of a comparison of ways of staffing. */
export type ComparedStaff = Pick<
  StaffAnswer,
  'differencesLevel' | 'decidedBy' | 'verdict' | 'best' | 'plans'
>;

/** Rosters that differ by less are equal, hours a week. */
const SAME_HOURS = 0.01;

/**
 * Plays ways of staffing on common random numbers and compares each with the lab as it is. The differences of all
 * options in one measure hold at once with the stated confidence (Bonferroni over options, not over measures); those to
 * the best option hold at once for all pairs of options.
 * Source: A. M. Law and W. D. Kelton, Simulation Modeling and Analysis, third edition, sections 10.2.1 and 10.3.1.
 *
 * @returns null when somebody stopped
 */
export async function compareStaff(question: StaffQuestion): Promise<ComparedStaff | null> {
  const { plans, observed, measures, replications, level } = question;
  const observations: (readonly Observation[])[] = [];
  for (const plan of plans) {
    const found = await observed.observe(plan, replications);
    if (found === null) return null;
    observations.push(found);
  }
  const told = measures.all.slice(0, measures.told);
  const differencesLevel = individualLevel(level, Math.max(1, plans.length - 1));
  const [today = []] = observations;
  const compared = plans.map((plan, index): StaffPlan => {
    const own = observations[index] ?? [];
    const differences = index === 0 ? [] : differencesOf(told, today, own, differencesLevel);
    const values = measuresOf(told, own, level);
    const { handHours, handCalculation } = handBeside(plan.lab, question.weeks);
    return {
      ...planOf(plan, question),
      ...waitingOf(own, measures, dutiesOf(plan.lab, question.weeks)),
      measures: values,
      differences,
      handHours,
      handCalculation,
      handSentence: handSentence(values, handHours),
    };
  });
  const deciding = decidingMeasure(compared);
  const best = bestOf(compared, deciding);
  // The best is chosen by the same replications, so that any two options may come to be compared.
  const pairs = (plans.length * (plans.length - 1)) / 2;
  const bestLevel = individualLevel(level, Math.max(1, pairs));
  const bestIndex = compared.findIndex(({ name }) => name === best);
  const withBest = compared.map((plan, index): StaffPlan => {
    if (bestIndex < 0 || index === bestIndex) return plan;
    const [first, second] = [observations[bestIndex] ?? [], observations[index] ?? []];
    const againstBest = differencesOf(told, first, second, bestLevel)[deciding];
    return { ...plan, againstBest: againstBest ?? null };
  });
  const notToldApart = withBest
    .filter(({ againstBest, hoursAgainstToday }) => hoursAgainstToday === 'the same' && isAlike(againstBest))
    .map(({ name }) => name);
  const answer = {
    differencesLevel,
    decidedBy: told[deciding]?.name ?? null,
    best: best === null ? null : { name: best, notToldApart },
    plans: withBest,
  };
  return { ...answer, verdict: staffVerdict(answer, deciding, question.currency) };
}

function planOf(
  plan: StaffPlanAsked,
  { plans, rules, weeks }: StaffQuestion,
): Omit<
  StaffPlan,
  'measures' | 'differences' | 'waiting' | 'waitingBySkill' | 'handHours' | 'handCalculation' | 'handSentence'
> {
  const duties = dutiesOf(plan.lab, weeks);
  const duty = dutyHours(plan.lab, duties, rules.night);
  const today =
    plans[0] === undefined ? duty : dutyHours(plans[0].lab, dutiesOf(plans[0].lab, weeks), rules.night);
  const more = duty.roster - today.roster;
  return {
    name: plan.name,
    origin: plan.origin,
    meaning: plan.meaning,
    changes: [...plan.changes],
    scenario: plan.scenario,
    hoursAgainstToday: Math.abs(more) < SAME_HOURS ? 'the same' : more > 0 ? 'more' : 'fewer',
    duty,
    costPerYear: plan.costPerYear,
    againstBest: null,
    breaches: ruleBreaches(plan.lab, duties, rules),
  };
}

/** Mean numbers of jobs that wait for people, by hour of the week. */
function waitingOf(
  observations: readonly Observation[],
  measures: StaffMeasures,
  duties: Duties,
): Pick<StaffPlan, 'waiting' | 'waitingBySkill'> {
  const week = (first: number): number[] =>
    Array.from({ length: HOURS_PER_WEEK }, (_, hour) => {
      const sum = observations.reduce((total, one) => total + (one[2 * (first + hour)] ?? 0), 0);
      return sum / observations.length;
    });
  return {
    waiting: week(firstHourOf(measures, -1)),
    waitingBySkill: measures.skills.map((skill, index) => ({
      skill,
      byHourOfWeek: week(firstHourOf(measures, index)),
      personsByHourOfWeek: personsByHour(duties, skill),
    })),
  };
}

/** The name of the option with the same hours that is surely better than today and has the best value; null: none. */
function bestOf(plans: readonly StaffPlan[], deciding: number): string | null {
  const better = plans.filter(
    ({ hoursAgainstToday, differences }) =>
      hoursAgainstToday === 'the same' && differences[deciding]?.outcome === 'better',
  );
  return (
    better.reduce<StaffPlan | null>(
      (best, plan) => (best === null || isBetter(plan, best, deciding) ? plan : best),
      null,
    )?.name ?? null
  );
}

function isAlike(difference: PlanDifference | null): boolean {
  return difference?.outcome === 'not told apart' || difference?.outcome === 'no difference';
}
